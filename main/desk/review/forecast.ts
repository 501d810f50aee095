import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import type { Forecast, Scenario } from '../../../shared-types/contract/review/plans.ts';
import type { Goal } from '../../../shared-types/log/setup.ts';
import {
  type EarlierSet,
  type ForecastGoal,
  type Forecast as ForecastOfGoal,
  forecast,
} from '../../analysis/forecast/forecast.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { asEstimate, whyNot } from './estimates.ts';
import { Stations } from './names.ts';
import { type ReviewLedger, readSelection, type Selection, sum } from './selection.ts';
import { costOf } from './totals.ts';

const SEED = 1;
const DRAWS = 2_000;
/** Latest sets that a forecast rests on: the form of years ago says little of the next race. */
const LATEST_SETS = 60;

/** What a goal will cost. Errors: `unknown-person`, `unknown-sheet`. */
export function forecastOf(
  ledger: ReviewLedger,
  { filter, goal, rate }: { readonly filter: AthleteFilter; readonly goal: Goal; readonly rate?: number | undefined },
): Forecast {
  ledger.people.get(filter.athlete);
  const { metresBack } = new Stations(ledger).of(filter.sheet);
  return forecastFrom(ledger, readSelection(ledger, filter), { goal, metresBack, rate });
}

export function forecastFrom(
  ledger: Pick<ReviewLedger, 'reports'>,
  { filter, sets }: Selection,
  { goal, metresBack, rate }: { readonly goal: Goal; readonly metresBack: number; readonly rate?: number | undefined },
): Forecast {
  const used = sets.slice(-LATEST_SETS);
  const counts = { sets: used.length, noReps: sum(used, (set) => set.noReps) };
  const attempts = sum(used, (set) => set.attempts);
  if (used.length === 0) return { kind: 'too-few', why: 'no-sets' };
  if (attempts === 0) return { kind: 'too-few', why: 'no-attempts' };
  const asked = goalOf(goal, used, metresBack);
  if (asked === null) return { kind: 'too-few', why: 'goal-unknown' };
  const earlier = earlierSets(ledger, filter);
  const present = forecast(earlier, asked, { seed: SEED, draws: DRAWS });
  if (!present.ok) {
    const why = present.error.kind === 'too-few-data' ? 'no-cost' : whyNot(present.error.kind, counts);
    return { kind: 'too-few', why };
  }
  const scenarios: Scenario[] = [scenarioOf('present', present.value)];
  const given = (name: Scenario['name'], at: number) => {
    const answer = forecast(earlier, asked, { seed: SEED, draws: DRAWS, rate: at });
    if (answer.ok) scenarios.push(scenarioOf(name, answer.value));
  };
  given('half', present.value.rate.estimate / 2);
  if (rate !== undefined) given('given', rate);
  return {
    kind: 'forecast',
    reps: Math.round(present.value.counted.estimate),
    scenarios,
    perNoRepS: costOf(used).perNoRepS,
    from: { ...counts, attempts },
  };
}

function scenarioOf(name: Scenario['name'], found: ForecastOfGoal): Scenario {
  return {
    name,
    rate: asEstimate(found.rate),
    noReps: asEstimate(found.noReps),
    seconds: found.seconds === null ? null : asEstimate(found.seconds),
    repsLost: found.repsLost === null ? null : asEstimate(found.repsLost),
  };
}

/** The goal as the sums take it; null for one without an end, or metres of which the sets say nothing. */
function goalOf(goal: Goal, sets: readonly ReviewSet[], metresBack: number): ForecastGoal | null {
  switch (goal.kind) {
    case 'reps':
      return goal;
    case 'clock':
      return { kind: 'clock', seconds: goal.milliseconds / 1_000 };
    case 'metres': {
      const marked = sets.filter((set) => set.metres > 0 && set.counted > 0);
      // Metres taken back were jumped as well.
      const jumped = sum(marked, (set) => set.metres + metresBack * set.noReps);
      const counted = sum(marked, (set) => set.counted);
      if (counted === 0) return null;
      return { kind: 'metres', metres: goal.metres, perJump: jumped / counted, back: metresBack };
    }
    case 'open':
      return null;
  }
}

function earlierSets({ reports }: Pick<ReviewLedger, 'reports'>, filter: Selection['filter']): EarlierSet[] {
  return reports.attempts(filter, LATEST_SETS).map(({ attempts }) => {
    const noReps = attempts.filter((attempt) => attempt.verdict === 'no-rep');
    return {
      noReps: noReps.length,
      attempts: attempts.length,
      costs: noReps.flatMap((attempt) => attempt.costSeconds ?? []),
      cleanCycles: attempts.flatMap(({ clean, cycleMs }) => (clean && cycleMs !== null ? [cycleMs / 1_000] : [])),
    };
  });
}
