import type { Belief, EyeGrid } from './eye.ts';
import { normalCdf } from './normal.ts';

/** Margins that may be shown, each with the chance that an eye without lapses calls it a no-rep, for every place of the grid. */
export interface Choices {
  readonly margins: readonly number[];
  readonly seen: readonly Float64Array[];
}

/** @param margins counted from the tolerance */
export function choices(grid: EyeGrid, margins: readonly number[]): Choices {
  const places = grid.strictness.flatMap((strictness) =>
    grid.precision.map((precision) => ({ strictness, precision })),
  );
  return {
    margins,
    seen: margins.map((margin) =>
      Float64Array.from(places, ({ strictness, precision }) => normalCdf((strictness - margin) / precision)),
    ),
  };
}

/**
 * The margin to show next: the one after whose call the judge's strictness and precision will be known best on average, that
 * is with the least expected entropy (Kontsevich & Tyler 1999, Vision Research 39:2729-2737; the lapses are summed out first:
 * Prins 2013, Journal of Vision 13(7):3).
 */
export function mostTellingMargin(grid: EyeGrid, belief: Belief, { margins, seen }: Choices): number {
  const sums = sumOutLapses(grid, belief);
  let best = { margin: margins[0] ?? 0, entropy: Number.POSITIVE_INFINITY };
  for (const [i, margin] of margins.entries()) {
    const entropy = expectedEntropy(sums, seen[i] ?? new Float64Array());
    if (entropy < best.entropy) best = { margin, entropy };
  }
  return best.margin;
}

/** Places of the grid that are thought of at all; a place's chance of a no-rep, times its weight, is `least + slope * seen`. */
interface LapsesOut {
  readonly place: Int32Array;
  readonly weight: Float64Array;
  readonly least: Float64Array;
  readonly slope: Float64Array;
}

/** Places less likely than this add nothing to the entropy that a choice would turn on. */
const NEGLIGIBLE = 1e-9;

function sumOutLapses({ lapse }: EyeGrid, belief: Belief): LapsesOut {
  const places = belief.length / lapse.length;
  const place = new Int32Array(places);
  const [weight, least, slope] = [new Float64Array(places), new Float64Array(places), new Float64Array(places)];
  let kept = 0;
  for (let at = 0; at < places; at += 1) {
    let [all, low, rise] = [0, 0, 0];
    for (let i = 0; i < lapse.length; i += 1) {
      const chance = belief[at * lapse.length + i] ?? 0;
      const rate = lapse[i] ?? 0;
      all += chance;
      low += chance * rate;
      rise += chance * (1 - 2 * rate);
    }
    if (all < NEGLIGIBLE) continue;
    place[kept] = at;
    weight[kept] = all;
    least[kept] = low;
    slope[kept] = rise;
    kept += 1;
  }
  return {
    place: place.subarray(0, kept),
    weight: weight.subarray(0, kept),
    least: least.subarray(0, kept),
    slope: slope.subarray(0, kept),
  };
}

/** Mean entropy of what is thought after a no-rep or a counted rep, each as likely as thought now. */
function expectedEntropy({ place, weight, least, slope }: LapsesOut, seen: Float64Array): number {
  let [calledAll, passedAll, logs] = [0, 0, 0];
  for (let i = 0; i < weight.length; i += 1) {
    const called = (least[i] ?? 0) + (slope[i] ?? 0) * (seen[place[i] ?? 0] ?? 0);
    const passed = (weight[i] ?? 0) - called;
    calledAll += called;
    passedAll += passed;
    if (called > 0) logs += called * Math.log(called);
    if (passed > 0) logs += passed * Math.log(passed);
  }
  const total = (all: number) => (all > 0 ? all * Math.log(all) : 0);
  return total(calledAll) + total(passedAll) - logs;
}
