import type { Link } from '../regression/links.ts';

/** Answers by margin: how many of `trials[i]` reps at `margins[i]` were called no-rep (or were answered rightly). */
export type PsychometricData = {
  readonly margins: ArrayLike<number>;
  readonly successes: ArrayLike<number>;
  readonly trials: ArrayLike<number>;
};

type Row = { readonly margin: number; readonly right: number; readonly wrong: number };

/** Rows by rising margin, equal margins put together, margins without trials left out. */
function rowsOf({ margins, successes, trials }: PsychometricData): Row[] {
  const byMargin = new Map<number, Row>();
  for (const [i, margin] of Array.from(margins).entries()) {
    const right = successes[i] ?? 0;
    const wrong = (trials[i] ?? 0) - right;
    if (right + wrong === 0) continue;
    const before = byMargin.get(margin) ?? { margin, right: 0, wrong: 0 };
    byMargin.set(margin, { margin, right: before.right + right, wrong: before.wrong + wrong });
  }
  return [...byMargin.values()].sort((a, b) => a.margin - b.margin);
}

/** Twice the log-likelihood short of a perfect fit when each row's chance is p; infinite when p rules a row out. */
function rowDeviance({ right, wrong }: Row, p: number): number {
  const part = (count: number, chance: number) => {
    if (count === 0) return 0;
    return chance > 0 ? 2 * count * Math.log(count / ((right + wrong) * chance)) : Number.POSITIVE_INFINITY;
  };
  return part(right, p) + part(wrong, 1 - p);
}

/**
 * The likeliest step from `guess` to 1 - `lapse`, rising or falling: between two margins, or at one, whose own chance is
 * then free between the two. The limit of ever steeper curves, for data that no curve of finite slope fits best.
 */
export function bestStep(
  data: PsychometricData,
  guess: number,
  lapse: number,
): { deviance: number; between: readonly [number, number] } {
  const rows = rowsOf(data);
  let best: { deviance: number; between: readonly [number, number] } = {
    deviance: Number.POSITIVE_INFINITY,
    between: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
  };
  for (const [low, high] of [
    [guess, 1 - lapse],
    [1 - lapse, guess],
  ] as const) {
    const below = runningSums(rows.map((row) => rowDeviance(row, low)));
    const above = runningSums(rows.map((row) => rowDeviance(row, high)).toReversed()).toReversed();
    for (const [i, row] of rows.entries()) {
      const next = rows[i + 1];
      const observed = row.right / (row.right + row.wrong);
      const own = Math.min(1 - lapse, Math.max(guess, observed));
      const at = (below[i] ?? 0) + rowDeviance(row, own) + (above[i + 1] ?? 0);
      const after = (below[i + 1] ?? 0) + (above[i + 1] ?? 0);
      // A gap is preferred to one of its ends when both fit equally well, since it says all that is known.
      if (next && after <= best.deviance) best = { deviance: after, between: [row.margin, next.margin] };
      if (at < best.deviance - 1e-9) best = { deviance: at, between: [row.margin, row.margin] };
    }
  }
  return best;
}

/** Sums of the first 0, 1, 2, ... values. */
function runningSums(values: readonly number[]): number[] {
  const sums = [0];
  for (const value of values) sums.push((sums.at(-1) ?? 0) + value);
  return sums;
}

const CENTRES = 40;
const SLOPES = 24;

/** The likeliest curve of a coarse grid of centres and slopes of either sign: where to begin when the usual start fails. */
export function bestOnGrid(data: PsychometricData, link: Link): { deviance: number; coefficients: [number, number] } {
  const rows = rowsOf(data);
  const lowest = rows[0]?.margin ?? 0;
  const range = (rows.at(-1)?.margin ?? 0) - lowest;
  let best: { deviance: number; coefficients: [number, number] } = {
    deviance: Number.POSITIVE_INFINITY,
    coefficients: [0, 0],
  };
  for (let i = 0; i <= CENTRES; i += 1) {
    const centre = lowest + range * ((2 * i) / CENTRES - 0.5);
    for (let j = 0; j < SLOPES; j += 1) {
      const size = (0.5 / range) * 1.5 ** j;
      for (const slope of [size, -size]) {
        const deviance = rows.reduce(
          (sum, row) => sum + rowDeviance(row, link.probability(slope * (row.margin - centre))),
          0,
        );
        if (deviance < best.deviance) best = { deviance, coefficients: [-slope * centre, slope] };
      }
    }
  }
  return best;
}
