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

interface LapsesOut {
  readonly weight: Float64Array;
  /** A place's chance of a no-rep is `least + slope * seen`, times its weight. */
  readonly least: Float64Array;
  readonly slope: Float64Array;
}

function sumOutLapses({ lapse }: EyeGrid, belief: Belief): LapsesOut {
  const places = belief.length / lapse.length;
  const [weight, least, slope] = [new Float64Array(places), new Float64Array(places), new Float64Array(places)];
  for (let place = 0; place < places; place += 1) {
    let [all, low, rise] = [0, 0, 0];
    for (const [i, rate] of lapse.entries()) {
      const chance = belief[place * lapse.length + i] ?? 0;
      all += chance;
      low += chance * rate;
      rise += chance * (1 - 2 * rate);
    }
    weight[place] = all;
    least[place] = low;
    slope[place] = rise;
  }
  return { weight, least, slope };
}

/** Mean entropy of what is thought after a no-rep or a counted rep, each as likely as thought now. */
function expectedEntropy({ weight, least, slope }: LapsesOut, seen: Float64Array): number {
  let [calledAll, passedAll, logs] = [0, 0, 0];
  for (let place = 0; place < weight.length; place += 1) {
    const called = (least[place] ?? 0) + (slope[place] ?? 0) * (seen[place] ?? 0);
    const passed = (weight[place] ?? 0) - called;
    calledAll += called;
    passedAll += passed;
    if (called > 0) logs += called * Math.log(called);
    if (passed > 0) logs += passed * Math.log(passed);
  }
  return calledAll * Math.log(calledAll) + passedAll * Math.log(passedAll) - logs;
}
