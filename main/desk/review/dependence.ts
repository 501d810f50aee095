import type { Hurry, Place, SlopeVerdict } from '../../../shared-types/contract/review/figures.ts';
import type { Computed } from '../../analysis/result.ts';
import { clusteredDependence, type Dependence } from '../../analysis/trends/clustered-dependence.ts';
import { trialsStillNeeded } from '../../analysis/trends/still-needed.ts';
import { addedBins, type ClusteredBins } from '../../ledger/bins.ts';
import { scales } from '../../ledger/facts.ts';
import { asEstimate, rateOf, whyNot } from './estimates.ts';
import type { ReviewLedger, Selection } from './selection.ts';
import { methodName, SIGNIFICANCE } from './trend.ts';

/** Odds ratios from 2/3 to 3/2 are too small to train for (our own margin). */
const FLAT = 1.5;

/** Where in the set the no-reps fall: 0 at go, 1 at the end. */
export function placeOf(ledger: Pick<ReviewLedger, 'reports'>, selection: Selection): Place {
  const bins = ledger.reports.binsBySet(selection.filter, 'progress');
  const edges = Array.from({ length: 10 }, (_, i) => ({ from: i / 10, to: (i + 1) / 10 }));
  return {
    ...slopeOf(bins, 'progress', { fromX: 0, toX: 1, curveFrom: 0, curveTo: 1 }, edges, selection.sets.length),
  };
}

/** Whether no-reps come with an attempt quicker, or slower, than the athlete's own pace there. */
export function hurryOf(ledger: Pick<ReviewLedger, 'reports'>, selection: Selection): Hurry {
  const bins = ledger.reports.binsBySet(selection.filter, 'pace');
  const edges = [
    { from: 0, to: 0.5 },
    ...Array.from({ length: 10 }, (_, i) => ({ from: (i + 5) / 10, to: (i + 6) / 10 })),
    { from: 1.5, to: null },
  ];
  const range = { fromX: 0.9, toX: 1.1, curveFrom: 0.5, curveTo: 1.5 };
  const { verdict, ...rest } = slopeOf(bins, 'pace', range, edges, selection.sets.length);
  if (verdict.kind === 'rises') return { ...rest, verdict: { kind: 'slow' } };
  if (verdict.kind === 'falls') return { ...rest, verdict: { kind: 'hurried' } };
  return { ...rest, verdict };
}

type Range = { readonly fromX: number; readonly toX: number; readonly curveFrom: number; readonly curveTo: number };
type Edges = readonly { readonly from: number; readonly to: number | null }[];

function slopeOf(rows: ClusteredBins, scale: 'progress' | 'pace', range: Range, edges: Edges, sets: number): Place {
  const { width } = scales[scale];
  const centre = (bin: number) => (bin + 0.5) * width;
  const size = rows.bin.length;
  const x = new Float64Array(size);
  const [totals, counts, clusters] = [new Int32Array(size), new Int32Array(size), new Int32Array(size)];
  const all = { attempts: 0, noReps: 0 };
  let used = 0;
  for (let row = 0; row < size; row += 1) {
    const at = centre(rows.bin[row] ?? 0);
    // Attempts far from the usual pace are pauses and half tries; they are shown, but would pull the line.
    if (at < range.curveFrom || at > range.curveTo) continue;
    x[used] = at;
    totals[used] = rows.attempts[row] ?? 0;
    counts[used] = rows.noReps[row] ?? 0;
    clusters[used] = rows.set[row] ?? 0;
    all.attempts += totals[used] ?? 0;
    all.noReps += counts[used] ?? 0;
    used += 1;
  }
  const part = <Column extends Float64Array | Int32Array>(column: Column) => column.subarray(0, used);
  const found = clusteredDependence(
    { x: part(x), counts: part(counts), totals: part(totals), clusters: part(clusters) },
    range,
  );
  const together = addedBins(rows, scale);
  const bins = binsOf(
    together.map(({ bin }) => centre(bin)),
    { attempts: together.map((bin) => bin.attempts), noReps: together.map((bin) => bin.noReps) },
    edges,
  );
  return { bins, ...answerOf(found, range, { sets, ...all }) };
}

/** Curve, fit and verdict of a dependence as the contract has them. */
export function answerOf(
  found: Computed<Dependence>,
  range: Pick<Range, 'fromX' | 'toX'>,
  counts: { readonly sets: number; readonly attempts: number; readonly noReps: number },
): Pick<Place, 'curve' | 'fitted' | 'verdict'> {
  if (!found.ok)
    return { curve: [], fitted: null, verdict: { kind: 'too-few', why: whyNot(found.error.kind, counts) } };
  const fit = found.value;
  return {
    curve: [...fit.curve],
    fitted: {
      method: methodName(fit.method),
      clusters: fit.clusters,
      fromX: range.fromX,
      toX: range.toX,
      from: asEstimate(fit.from),
      to: asEstimate(fit.to),
      difference: asEstimate(fit.difference),
      oddsRatio: asEstimate(fit.oddsRatio),
      pValue: fit.pValue,
    },
    verdict: verdictOf(fit, counts.attempts),
  };
}

function verdictOf(fit: Dependence, attempts: number): SlopeVerdict {
  if (fit.pValue < SIGNIFICANCE) return { kind: fit.statistic > 0 ? 'rises' : 'falls' };
  const { lower, upper } = fit.oddsRatio90;
  if (lower > 1 / FLAT && upper < FLAT) return { kind: 'flat' };
  return { kind: 'unclear', stillNeeded: trialsStillNeeded(attempts, fit.statistic) };
}

/** The counts in wider bins, each row by the middle of its own bin. */
export function binsOf(
  x: ArrayLike<number>,
  rows: { readonly attempts: ArrayLike<number>; readonly noReps: ArrayLike<number> },
  edges: Edges,
): Place['bins'] {
  const bins = edges.map(({ from, to }) => ({ from, to, attempts: 0, noReps: 0 }));
  for (let row = 0; row < x.length; row += 1) {
    const at = x[row] ?? 0;
    const bin = bins.find(({ from, to }) => at >= from && (to === null || at < to)) ?? bins.at(-1);
    if (bin === undefined) continue;
    bin.attempts += rows.attempts[row] ?? 0;
    bin.noReps += rows.noReps[row] ?? 0;
  }
  return bins.map((bin) => ({ ...bin, rate: rateOf(bin.noReps, bin.attempts) }));
}
