import { type Computed, computed, failed } from '../result.ts';

export type KrippendorffAlpha = {
  readonly alpha: number;
  /** Values that could be paired with another of the same attempt. */
  readonly pairable: number;
  /** Share of disagreeing pairs, seen and expected by chance. */
  readonly observedDisagreement: number;
  readonly expectedDisagreement: number;
};

/**
 * Krippendorff's alpha for nominal categories, any number of judges, with missing verdicts (Krippendorff 2011, Computing
 * Krippendorff's Alpha-Reliability, from the coincidence matrix).
 *
 * @param units a list an attempt: the category each judge gave it, undefined or null where a judge missed it
 * Attempts with fewer than two verdicts drop out. Errors: `no-data` when none is left, `one-category` when all verdicts
 * are alike (no variation to be reliable about).
 */
export function krippendorffAlpha(
  units: readonly (readonly (string | number | undefined | null)[])[],
): Computed<KrippendorffAlpha> {
  const totals = new Map<string | number, number>();
  let pairable = 0;
  let agreeing = 0;
  for (const unit of units) {
    const present = unit.filter((value) => value !== undefined && value !== null);
    if (present.length < 2) continue;
    pairable += present.length;
    const counts = new Map<string | number, number>();
    for (const value of present) counts.set(value, (counts.get(value) ?? 0) + 1);
    for (const [value, count] of counts) {
      totals.set(value, (totals.get(value) ?? 0) + count);
      agreeing += (count * (count - 1)) / (present.length - 1);
    }
  }
  if (pairable === 0) return failed('no-data', 'No attempt was judged by two or more.');
  if (totals.size < 2) return failed('one-category', 'All verdicts are alike: alpha is undefined.');
  const squares = [...totals.values()].reduce((sum, count) => sum + count * count, 0);
  const observedDisagreement = (pairable - agreeing) / pairable;
  const expectedDisagreement = (pairable * pairable - squares) / (pairable * (pairable - 1));
  return computed({
    alpha: 1 - observedDisagreement / expectedDisagreement,
    pairable,
    observedDisagreement,
    expectedDisagreement,
  });
}
