import { alignLogs } from '../../main/analysis/agreement/align-logs.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import { randomNormal } from '../../main/analysis/random/variates.ts';

export interface AlignLine {
  readonly cycle: number;
  readonly lag: number;
  readonly reps: number;
  /** True pairs found, of all true pairs. */
  readonly found: number;
  /** Right pairs, of all that were found or should have been. */
  readonly right: number;
}

const REPS = 100;
const MISSED = 0.02;
const JITTER = 0.2;

/**
 * Two judges of the same set: cycles of `cycle` seconds that vary by a tenth, each judge pressing with a deviation of 0.2 s,
 * the second `lag` seconds later, each forgetting 2 % of the reps.
 */
export function proveAlignment(cycle: number, lag: number, sets: number, seed: number): AlignLine {
  let [pairs, hit, wrong] = [0, 0, 0];
  for (let set = 0; set < sets; set += 1) {
    const g = seededGenerator(seed + set);
    let time = 0;
    const reps = Array.from({ length: REPS }, () => {
      time += Math.max(0.6 * cycle, cycle * (1 + 0.1 * randomNormal(g)));
      return time;
    });
    const log = (late: number) =>
      reps
        .flatMap((at, rep) => (g.uniform() < MISSED ? [] : [{ rep, at: at + late + JITTER * randomNormal(g) }]))
        .sort((a, b) => a.at - b.at);
    const [first, second] = [log(0), log(lag)];
    const aligned = alignLogs(
      first.map((tap) => tap.at),
      second.map((tap) => tap.at),
      1,
    );
    const inSecond = new Set(second.map((tap) => tap.rep));
    pairs += first.filter((tap) => inSecond.has(tap.rep)).length;
    for (const [i, j] of aligned.pairs) {
      if (first[i]?.rep === second[j]?.rep) hit += 1;
      else wrong += 1;
    }
  }
  return { cycle, lag, reps: sets * REPS, found: hit / pairs, right: hit / (pairs + wrong) };
}

export const ALIGN_CASES: readonly (readonly [cycle: number, lag: number])[] = [
  [1.5, 0],
  [2, 0],
  [3, 0],
  [4, 0],
  [1.5, 0.3],
  [1.5, 0.5],
  [2, 0.5],
  [4, 0.8],
];
