import type { Forecast, RaceCard, RacePlan } from '../../../shared-types/contract/review/plans.ts';
import type { Goal } from '../../../shared-types/log/setup.ts';

/** Parts of the time of a plan, milliseconds. */
interface Budget {
  readonly reps: number;
  readonly startMs: number;
  readonly noRepMs: number;
  readonly breakMs: number;
}

/**
 * Target pace and breaks for a wished time, or for the own usual pace. The athlete's own number of breaks is kept as long as
 * the pace then needed is one that the athlete has held over a whole set; breaks go one by one before it is called out of
 * reach. Breaks part the reps into even portions, the larger ones first.
 */
export function planOf(
  own: RaceCard['own'],
  forecast: Forecast,
  { goal, wishedMs }: { readonly goal: Goal; readonly wishedMs: number | null },
): RacePlan {
  const { cleanS, quickestS } = own;
  if (forecast.kind === 'too-few') return forecast;
  if (cleanS === null || quickestS === null) return { kind: 'too-few', why: 'no-cost' };
  const { reps } = forecast;
  if (reps < 1) return { kind: 'too-few', why: 'goal-unknown' };
  const present = forecast.scenarios.find((scenario) => scenario.name === 'present');
  // Without a known cost a no-rep takes at least the rep that has to be done again.
  const noRepS = present?.seconds?.value ?? (present?.noReps.value ?? 0) * cleanS;
  const budget: Budget = {
    reps,
    startMs: own.startMs ?? 0,
    noRepMs: Math.round(noRepS * 1_000),
    breakMs: own.breakMs ?? 0,
  };
  const breaks = budget.breakMs === 0 ? 0 : Math.min(reps - 1, Math.round(((own.breaksPer100 ?? 0) * reps) / 100));
  const wished = goal.kind === 'clock' ? goal.milliseconds : wishedMs;
  if (wished === null) return planned(budget, breaks, cleanS, 'easy');
  for (let kept = breaks; kept >= 0; kept -= 1) {
    const targetS = paceFor(budget, kept, wished);
    if (targetS >= quickestS) {
      return planned(budget, kept, targetS, targetS >= cleanS && kept === breaks ? 'easy' : 'stretch', wished);
    }
  }
  const targetS = paceFor(budget, 0, wished);
  return {
    kind: 'out-of-reach',
    reps,
    targetS: targetS > 0 ? targetS : null,
    quickestMs: totalOf(budget, 0, quickestS),
  };
}

function paceFor({ reps, startMs, noRepMs, breakMs }: Budget, breaks: number, wished: number): number {
  return (wished - startMs - noRepMs - breaks * breakMs) / reps / 1_000;
}

function totalOf({ reps, startMs, noRepMs, breakMs }: Budget, breaks: number, targetS: number): number {
  return Math.round(startMs + noRepMs + breaks * breakMs + reps * targetS * 1_000);
}

/** Portions where there are no breaks: quarters to look at the clock by. */
const PORTIONS = 4;

function planned(
  budget: Budget,
  breaks: number,
  targetS: number,
  effort: 'easy' | 'stretch',
  totalMs = totalOf(budget, breaks, targetS),
): RacePlan {
  const { reps, startMs, noRepMs, breakMs } = budget;
  const portions = Math.min(reps, breaks === 0 ? PORTIONS : breaks + 1);
  const splits = Array.from({ length: portions }, (_, index) => {
    const done = Math.ceil((reps * (index + 1)) / portions - 1e-9);
    const moving = (done / reps) * (noRepMs + reps * targetS * 1_000);
    const isLast = index === portions - 1;
    return {
      reps: done,
      atMs: isLast ? totalMs : Math.round(startMs + moving + (breaks === 0 ? 0 : index * breakMs)),
      breakMs: isLast || breaks === 0 ? 0 : breakMs,
    };
  });
  return { kind: 'plan', effort, reps, targetS, totalMs, startMs, noRepMs, splits };
}
