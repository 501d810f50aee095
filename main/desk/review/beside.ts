import type { Beside } from '../../../shared-types/contract/review/judges.ts';
import { twoSidedDeviate } from '../../analysis/interval.ts';
import {
  type StratifiedDifference,
  type Stratum,
  stratifiedDifference,
} from '../../analysis/stratified/mantel-haenszel.ts';
import { trialsStillNeeded } from '../../analysis/trends/still-needed.ts';
import { asEstimate } from './estimates.ts';

/** Within two no-reps in a hundred attempts two judges pass for alike (our own margin). */
const ALIKE = 0.02;

/** One set in a stratum (an athlete at a station), by the judge in question or by another. */
export interface JudgedSet {
  readonly stratum: string;
  readonly own: boolean;
  readonly noReps: number;
  readonly attempts: number;
}

/** The judge's sets beside the other judges', within strata that both have. */
export function besideOf(sets: readonly JudgedSet[]): Beside {
  const cells = cellsOf(sets);
  const strata = [...cells.values()].flatMap(({ own, others }): Stratum[] =>
    own.attempts === 0 || others.attempts === 0
      ? []
      : [
          {
            firstCount: own.noReps,
            firstTotal: own.attempts,
            secondCount: others.noReps,
            secondTotal: others.attempts,
          },
        ],
  );
  const dispersion = dispersionOf(sets, cells);
  const found = stratifiedDifference(strata, { dispersion });
  const own = sideOf(strata.map((item) => ({ noReps: item.firstCount, attempts: item.firstTotal })));
  const others = sideOf(strata.map((item) => ({ noReps: item.secondCount, attempts: item.secondTotal })));
  const head = { own, others, strata: strata.length, dispersion };
  if (!found.ok) {
    return { ...head, difference: null, pValue: null, verdict: { kind: 'too-few', why: whyNone(sets, own, others) } };
  }
  const { value } = found;
  return { ...head, difference: asEstimate(value), pValue: value.pValue, verdict: verdictOf(value, own.attempts) };
}

function verdictOf(found: StratifiedDifference, attempts: number): Beside['verdict'] {
  if (found.lower > 0) return { kind: 'more' };
  if (found.upper < 0) return { kind: 'fewer' };
  if (Math.abs(found.estimate) + twoSidedDeviate(0.9) * found.standardError < ALIKE) return { kind: 'alike' };
  return { kind: 'unclear', stillNeeded: trialsStillNeeded(attempts, found.estimate / found.standardError) };
}

type Side = Beside['own'];

function whyNone(sets: readonly JudgedSet[], own: Side, others: Side) {
  const judged = sets.filter((set) => set.own);
  if (judged.length === 0) return 'no-sets';
  if (judged.every((set) => set.attempts === 0)) return 'no-attempts';
  if (others.attempts === 0) return 'no-others';
  return own.noReps + others.noReps === 0 ? 'no-no-reps' : 'only-no-reps';
}

function sideOf(cells: readonly Cell[]): Side {
  const noReps = cells.reduce((sum, cell) => sum + cell.noReps, 0);
  const attempts = cells.reduce((sum, cell) => sum + cell.attempts, 0);
  return { noReps, attempts, rate: attempts === 0 ? null : noReps / attempts };
}

type Cell = { noReps: number; attempts: number };

function cellsOf(sets: readonly JudgedSet[]): Map<string, { own: Cell; others: Cell }> {
  const cells = new Map<string, { own: Cell; others: Cell }>();
  for (const { stratum, own, noReps, attempts } of sets) {
    let pair = cells.get(stratum);
    if (pair === undefined) {
      pair = { own: { noReps: 0, attempts: 0 }, others: { noReps: 0, attempts: 0 } };
      cells.set(stratum, pair);
    }
    const cell = own ? pair.own : pair.others;
    cell.noReps += noReps;
    cell.attempts += attempts;
  }
  return cells;
}

/** Pearson's chi-square of the sets about their cell's rate, over its degrees of freedom; not below 1. */
function dispersionOf(sets: readonly JudgedSet[], cells: ReadonlyMap<string, { own: Cell; others: Cell }>): number {
  let pearson = 0;
  let used = 0;
  const seen = new Set<Cell>();
  for (const { stratum, own, noReps, attempts } of sets) {
    const pair = cells.get(stratum);
    if (pair === undefined || attempts === 0 || pair.own.attempts === 0 || pair.others.attempts === 0) continue;
    const cell = own ? pair.own : pair.others;
    const rate = cell.noReps / cell.attempts;
    if (rate <= 0 || rate >= 1) continue;
    pearson += (noReps - attempts * rate) ** 2 / (attempts * rate * (1 - rate));
    used += 1;
    seen.add(cell);
  }
  const degrees = used - seen.size;
  return degrees > 0 ? Math.max(1, pearson / degrees) : 1;
}
