import {
  type Answer,
  type Belief,
  type EyeGrid,
  type EyeReadings,
  eyeGrid,
  learn,
  openBelief,
  readBelief,
} from '../../../shared-types/drills/eye.ts';
import { type Computed, computed, failed } from '../result.ts';

const LEAST_ANSWERS = 10;
/** Margins are known to a twentieth of a centimetre or so; answers nearer than this part of the range are put together. */
const PARTS = 600;

/**
 * A judge's strictness and precision for one fault from their calls: the probit psychometric function with lapses, strictness
 * and the logarithm of precision alike likely beforehand over the margins `low` to `high` that can be shown, lapses summed
 * out; posterior medians and 95 % equal-tailed limits on a grid (Kuss, Jäkel & Wichmann 2005, Journal of Vision 5:478-492,
 * for Bayesian psychometric functions; lapses after Wichmann & Hill 2001).
 *
 * Errors: `no-data`; `too-few-data` below ten calls; `one-category` when all were called alike; `no-variation` when the calls
 * do not follow the margin; `out-of-reach` when the line lies beyond what can be shown.
 */
export function fitEye(answers: readonly Answer[], range: { low: number; high: number }): Computed<EyeReadings> {
  if (answers.length === 0) return failed('no-data', 'No rep was called.');
  if (answers.length < LEAST_ANSWERS) return failed('too-few-data', 'Ten calls are the least that tell of a line.');
  const noReps = answers.filter((answer) => answer.noRep).length;
  if (noReps === 0 || noReps === answers.length) return failed('one-category', 'Every rep was called the same way.');
  const { low, high } = range;
  const together = collected(answers, (high - low) / PARTS);
  const coarse = eyeGrid(low, high);
  const first = learn(coarse, openBelief(coarse), together);
  const grid = closer(coarse, first);
  const readings = readBelief(grid, learn(grid, openBelief(grid), together));
  if (readings.precision.value > 0.6 * (high - low)) {
    return failed('no-variation', 'The calls do not follow the margin.');
  }
  if (readings.strictness.value < low || readings.strictness.value > high) {
    return failed('out-of-reach', 'The line lies beyond what the figure can show.');
  }
  return computed(readings);
}

function collected(answers: readonly Answer[], step: number): Answer[] {
  const found = new Map<string, { margin: number; noRep: boolean; count: number }>();
  for (const { margin, noRep, count = 1 } of answers) {
    const rounded = Math.round(margin / step) * step;
    const key = `${rounded} ${noRep}`;
    const known = found.get(key);
    if (known === undefined) found.set(key, { margin: rounded, noRep, count });
    else known.count += count;
  }
  return [...found.values()];
}

/** A grid of the same prior, drawn closer round what the first look leaves possible. */
function closer(grid: EyeGrid, belief: Belief): EyeGrid {
  const { strictness, precision } = readBelief(grid, belief, 0.9998);
  const stepS = (grid.strictness[1] ?? 0) - (grid.strictness[0] ?? 0);
  const stepP = Math.log((grid.precision[1] ?? 1) / (grid.precision[0] ?? 1));
  const even = (from: number, to: number, count: number) =>
    Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  const logs = grid.precision.map(Math.log);
  return {
    lapse: grid.lapse,
    strictness: even(
      Math.max(grid.strictness[0] ?? 0, strictness.low - stepS),
      Math.min(grid.strictness.at(-1) ?? 0, strictness.high + stepS),
      61,
    ),
    precision: even(
      Math.max(logs[0] ?? 0, Math.log(precision.low) - stepP),
      Math.min(logs.at(-1) ?? 0, Math.log(precision.high) + stepP),
      41,
    ).map(Math.exp),
  };
}
