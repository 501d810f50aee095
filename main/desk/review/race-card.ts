import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import type { RaceCard } from '../../../shared-types/contract/review/plans.ts';
import type { Goal } from '../../../shared-types/log/setup.ts';
import { calledName } from '../../../shared-types/people.ts';
import { sampleMedian } from '../../analysis/distributions/sample-quantile.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { forecastFrom } from './forecast.ts';
import { Stations } from './names.ts';
import { planOf } from './race-plan.ts';
import { reasonsOf } from './reasons.ts';
import { type ReviewLedger, readSelection, sum } from './selection.ts';

/** The plan rests on the latest sets: today's pace, not that of years ago. */
const LATEST_SETS = 20;
/** Fewer clean cycles than this are no pace of a set to hold an athlete to. */
const FEWEST_FOR_PACE = 10;

/** What an athlete takes along to the race. Errors: `unknown-person`, `unknown-sheet`. */
export function raceCardOf(
  ledger: ReviewLedger,
  given: { readonly filter: AthleteFilter; readonly goal: Goal; readonly wishedMs: number | null },
): RaceCard {
  const { filter, goal, wishedMs } = given;
  const athlete = ledger.people.get(filter.athlete);
  const stations = new Stations(ledger);
  const { metresBack } = stations.of(filter.sheet);
  const selection = readSelection(ledger, filter);
  const forecast = forecastFrom(ledger, selection, { goal, metresBack });
  const own = ownPace(selection.sets.slice(-LATEST_SETS));
  const { lines } = reasonsOf(ledger, stations, selection);
  return {
    athlete: calledName(athlete),
    station: stations.name(filter.sheet),
    own,
    plan: planOf(own, forecast, { goal, wishedMs }),
    faults: lines
      .filter((line) => line.code !== '')
      .map(({ code, name, cue, noReps, share, per100S }) => ({ code, name, cue, noReps, share, per100S })),
    forecast,
  };
}

function ownPace(sets: readonly ReviewSet[]): RaceCard['own'] {
  const paced = sets.filter((set) => set.cleanMs !== null);
  const long = paced.filter((set) => set.cleanCycles >= FEWEST_FOR_PACE);
  const cycles = (long.length > 0 ? long : paced).flatMap((set) => set.cleanMs ?? []);
  const clean = sampleMedian(cycles);
  const start = sampleMedian(sets.flatMap((set) => set.startMs ?? []));
  const counted = sum(sets, (set) => set.counted);
  const rested = sets.filter((set) => set.breakMs !== null);
  const breaks = sum(rested, (set) => set.breaks);
  return {
    sets: sets.length,
    cleanS: clean === undefined ? null : clean / 1_000,
    quickestS: cycles.length === 0 ? null : Math.min(...cycles) / 1_000,
    startMs: start === undefined ? null : Math.round(start),
    breaksPer100: counted === 0 ? null : (100 * sum(sets, (set) => set.breaks)) / counted,
    breakMs: breaks === 0 ? null : Math.round(sum(rested, (set) => set.breakMs ?? 0) / breaks),
  };
}
