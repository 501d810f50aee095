import { onCounts } from './r-counts.ts';
import { onModels } from './r-models.ts';
import type { RSession } from './r-session.ts';
import { type Draw, drawFrom } from './random-cases.ts';

/** One method next to R on random inputs. */
export type RComparison = {
  readonly method: string;
  /** What of R it is compared with: a function of its own, or a plain formula written for this. */
  readonly reference: string;
  readonly cases: number;
  /** Largest relative difference allowed (absolute below one thousandth). */
  readonly allowed: number;
  /** R's expression of a random case and our figures for it. */
  readonly next: (draw: Draw) => { readonly r: string; readonly ours: readonly number[] };
};

export type RDifference = RComparison & { readonly figures: number; readonly largest: number; readonly worst: string };

export const rComparisons: readonly RComparison[] = [...onModels, ...onCounts];

const BATCH = 20;

/** Relative difference; below one thousandth the absolute one, in thousandths. Infinite when either is no number. */
function difference(ours: number, reference: number): number {
  if (!Number.isFinite(ours) || !Number.isFinite(reference)) return Number.POSITIVE_INFINITY;
  return Math.abs(ours - reference) / Math.max(1e-3, Math.abs(reference));
}

/** Runs the cases of one comparison; `seed` fixes the inputs. */
export async function compareWithR(r: RSession, comparison: RComparison, seed = 20_261_125): Promise<RDifference> {
  const draw = drawFrom(seed);
  const cases = draw.list(comparison.cases, () => comparison.next(draw));
  let largest = 0;
  let figures = 0;
  let worst = '';
  for (let start = 0; start < cases.length; start += BATCH) {
    const batch = cases.slice(start, start + BATCH);
    const reference = await r.numbers(`c(${batch.map((one) => one.r).join(',')})`);
    const ours = batch.flatMap((one) => one.ours);
    if (ours.length !== reference.length) throw new Error(`${comparison.method}: R gave ${reference.length} figures.`);
    for (const [i, value] of ours.entries()) {
      const apart = difference(value, reference[i] ?? Number.NaN);
      figures += 1;
      if (apart > largest) {
        largest = apart;
        worst = `ours ${value}, R ${reference[i]}`;
      }
    }
  }
  return { ...comparison, figures, largest, worst };
}
