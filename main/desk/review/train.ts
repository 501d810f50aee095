import type { Reason, Reasons, Train } from '../../../shared-types/contract/review/figures.ts';
import { whatToTrain } from '../../analysis/forecast/what-to-train.ts';
import { seededGenerator } from '../../analysis/random/generator.ts';
import { randomInteger } from '../../analysis/random/variates.ts';
import { reasonKey } from './reasons.ts';
import { type ReviewLedger, type Selection, sum } from './selection.ts';
import { FEWEST_FOR_SPREAD } from './totals.ts';

const SEED = 1;
/** Sets drawn in all resamples together: a bound on the time over ten years of a gym. */
const MOST_DRAWN = 2_000_000;
const MOST_RESAMPLES = 999;
const FEWEST_RESAMPLES = 99;

/** What to train first: the explained reason that loses the most seconds; by number where no cost is known. */
export function trainOf(ledger: ReviewLedger, selection: Selection, { lines }: Reasons): Train | null {
  const explained = lines.filter((line) => line.code !== '');
  const by = explained.some((line) => line.per100S !== null) ? 'seconds' : 'no-reps';
  const weigh = (line: Reason) => (by === 'seconds' ? (line.seconds ?? 0) : line.noReps);
  const [first, next] = explained.toSorted((a, b) => weigh(b) - weigh(a) || b.noReps - a.noReps);
  if (first === undefined) return null;
  const all = sum(explained, weigh);
  return {
    sheet: first.sheet,
    code: first.code,
    name: first.name,
    cue: first.cue,
    remedy: first.remedy,
    noReps: first.noReps,
    per100S: first.per100S,
    share: all > 0 ? weigh(first) / all : first.noReps / sum(explained, (line) => line.noReps),
    by,
    sure: surenessOf(ledger, selection, reasonKey(first.sheet, first.code), by),
    next: next === undefined ? null : { sheet: next.sheet, code: next.code, name: next.name, per100S: next.per100S },
  };
}

function surenessOf(ledger: ReviewLedger, selection: Selection, key: string, by: Train['by']): number | null {
  const sets = by === 'seconds' ? selection.sets.filter((set) => set.costS !== null) : selection.sets;
  return sets.length < FEWEST_FOR_SPREAD
    ? surenessInSets(ledger, selection, key)
    : surenessOverSets(selection, key, by);
}

/** Few sets: from the costs of the single no-reps, see `whatToTrain`. */
function surenessInSets({ reports }: ReviewLedger, { filter, sets }: Selection, key: string): number | null {
  const ids = reports.setIds(sets.map((set) => set.n));
  const sheetOf = new Map(sets.map((set) => [ids.get(set.n), set.sheet]));
  const attempts = reports.attempts(filter, sets.length).flatMap((set) =>
    set.attempts.map(({ verdict, faults, costSeconds }) => ({
      verdict,
      cost: costSeconds,
      faults: faults.map((fault) => reasonKey(sheetOf.get(set.id) ?? '', fault)),
    })),
  );
  const noReps = attempts.filter(({ verdict }) => verdict === 'no-rep');
  const found = whatToTrain(noReps, attempts.length, { seed: SEED });
  return found.ok ? (found.value.ranking.find((line) => line.fault === key)?.sure ?? null) : null;
}

/** Share of bootstrap resamples of whole sets (Davison & Hinkley 1997, 3.8) in which the reason costs the most. */
function surenessOverSets({ sets, reasons }: Selection, key: string, by: Train['by']): number {
  const used = by === 'seconds' ? sets.filter((set) => set.costS !== null) : sets;
  const placeOf = new Map(used.map((set, place) => [set.n, place]));
  const keys: string[] = [];
  const indexOf = new Map<string, number>();
  const rows: { index: number; value: number }[][] = used.map(() => []);
  for (const { n, fault, noReps, seconds } of reasons) {
    const place = placeOf.get(n);
    const sheet = place === undefined ? undefined : used[place]?.sheet;
    if (place === undefined || sheet === undefined || fault === '') continue;
    const name = reasonKey(sheet, fault);
    const index = indexOf.get(name) ?? keys.push(name) - 1;
    indexOf.set(name, index);
    rows[place]?.push({ index, value: by === 'seconds' ? (seconds ?? 0) : noReps });
  }
  const generator = seededGenerator(SEED);
  const resamples = Math.round(
    Math.min(MOST_RESAMPLES, Math.max(FEWEST_RESAMPLES, MOST_DRAWN / Math.max(1, used.length))),
  );
  const wanted = indexOf.get(key);
  let first = 0;
  for (let resample = 0; resample < resamples; resample += 1) {
    const sums = new Float64Array(keys.length);
    for (let draw = 0; draw < used.length; draw += 1) {
      for (const { index, value } of rows[randomInteger(generator, used.length)] ?? []) {
        sums[index] = (sums[index] ?? 0) + value;
      }
    }
    if (sums.indexOf(sums.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)) === wanted) {
      first += 1;
    }
  }
  return first / resamples;
}
