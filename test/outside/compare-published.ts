import { ourValues, unansweredFigures } from './our-values.ts';
import { type PublishedEntry, publishedEntries } from './published-entry.ts';

export type Comparison = {
  readonly entry: PublishedEntry;
  readonly figure: string;
  /** As printed, or as R gives it. */
  readonly reference: number;
  readonly against: 'printed' | 'R';
  readonly ours: number;
  readonly allowed: number;
};

/** Figures whose reference comes from an optimiser or a root finder that stops early: relative difference allowed. */
const LOOSER_IN_R: Readonly<Record<string, number>> = {
  '2-mn': 1e-7,
  '2-mee': 1e-7,
  '2-perondi': 1e-7,
  '11-power1.n90': 1e-6,
  '11-power1.p2_90': 3e-5,
  '14-law-bootse.se_boot': 0.03,
  '15-pf-a': 1e-5,
  '16-bt-baseball': 2e-6,
};

/** Printed figures that are themselves less exact than their digits: absolute difference allowed, and why. */
const LOOSER_IN_PRINT: Readonly<Record<string, number>> = {
  // R's default root finder stops at power 0.89996; with tol = 1e-14 it gives 0.8026306, as here.
  '11-power1.p2_90': 2e-5,
};

function looser(list: Readonly<Record<string, number>>, figure: string): number | undefined {
  return Object.entries(list).find(([start]) => figure.startsWith(start))?.[1];
}

/** Half a unit of the last printed digit: 0.00005 for "0.2553", 5e-9 for "4.115e-05" with its exponent. */
export function printedTolerance(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

function flat(values: unknown, prefix = ''): [string, string | number][] {
  if (typeof values === 'number' || typeof values === 'string') return [[prefix, values]];
  if (Array.isArray(values)) return values.flatMap((value, i) => flat(value, `${prefix}[${i}]`));
  if (values === null || typeof values !== 'object') return [];
  return Object.entries(values).flatMap(([key, value]) => flat(value, prefix ? `${prefix}.${key}` : key));
}

function allowedFor(entry: PublishedEntry, figure: string, printed: string | number): number {
  const known = looser(LOOSER_IN_PRINT, `${entry.id}.${figure}`);
  if (known !== undefined) return known;
  const digit =
    typeof printed === 'string' ? printedTolerance(printed) : 0.5 * 10 ** -Number.parseInt(String(entry.precision), 10);
  const stated = Number(entry.tolerance);
  return Number.isFinite(stated) ? Math.max(stated, digit) : digit;
}

/** Every printed figure, and every figure of R, of an answered entry next to ours. */
export function comparisonsOf(entry: PublishedEntry): Comparison[] {
  const compute = ourValues[entry.id];
  if (!compute) return [];
  const ours = compute(entry.input);
  const printed = flat(entry.published).flatMap(([figure, value]): Comparison[] => {
    if (`${entry.id}.${figure}` in unansweredFigures || entry.agrees === false) return [];
    // A rounding hair on top, so that a value on the very edge of a digit does not depend on the last bit.
    const allowed = allowedFor(entry, figure, value) * (1 + 1e-9);
    const our = ours[figure] ?? Number.NaN;
    return [{ entry, figure, reference: Number(value), against: 'printed', ours: our, allowed }];
  });
  const named = Array.isArray(entry.recomputed) ? { recomputed: entry.recomputed } : entry.recomputed;
  const inR = flat(named).flatMap(([figure, value]): Comparison[] => {
    const our = ours[figure];
    if (our === undefined || typeof value !== 'number') return [];
    const relative = looser(LOOSER_IN_R, `${entry.id}.${figure}`) ?? 1e-9;
    return [
      { entry, figure, reference: value, against: 'R', ours: our, allowed: relative * Math.max(1e-3, Math.abs(value)) },
    ];
  });
  return [...printed, ...inR];
}

export function allComparisons(): Comparison[] {
  return publishedEntries.flatMap(comparisonsOf);
}
