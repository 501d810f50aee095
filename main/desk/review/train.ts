import type { Reason, Reasons, Train } from '../../../shared-types/contract/review/figures.ts';
import { whatToTrain } from '../../analysis/forecast/what-to-train.ts';
import { type RandomGenerator, seededGenerator } from '../../analysis/random/generator.ts';
import { randomInteger } from '../../analysis/random/variates.ts';
import { reasonKey } from './reasons.ts';
import { type ReviewLedger, type Selection, sum } from './selection.ts';
import { FEWEST_FOR_SPREAD } from './totals.ts';

const SEED = 1;
const RESAMPLES = 999;
const MOST_GROUPS = 200;

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

/**
 * Share of bootstrap resamples of whole sets (Davison & Hinkley 1997, 3.8) in which the reason costs the most. More than 200
 * sets are dealt at random into 200 groups, which stand for them: the spread between groups is that between sets.
 */
function surenessOverSets({ sets, reasons, placeOf }: Selection, key: string, by: Train['by']): number {
  const used = sets.flatMap((set, place) => (by === 'no-reps' || set.costS !== null ? [place] : []));
  const groups = Math.min(MOST_GROUPS, used.length);
  const generator = seededGenerator(SEED);
  shuffle(used, generator);
  const groupOf = new Int32Array(sets.length).fill(-1);
  for (const [turn, place] of used.entries()) groupOf[place] = turn % groups;
  const losses = new Map<string, Float64Array>();
  for (const { n, fault, noReps, seconds } of reasons) {
    const place = placeOf(n);
    const group = groupOf[place] ?? -1;
    const set = sets[place];
    if (group < 0 || set === undefined || fault === '') continue;
    const name = reasonKey(set.sheet, fault);
    let own = losses.get(name);
    if (own === undefined) {
      own = new Float64Array(groups);
      losses.set(name, own);
    }
    own[group] = (own[group] ?? 0) + (by === 'seconds' ? (seconds ?? 0) : noReps);
  }
  const drawn = new Int32Array(groups);
  let first = 0;
  for (let resample = 0; resample < RESAMPLES; resample += 1) {
    for (let draw = 0; draw < groups; draw += 1) drawn[draw] = randomInteger(generator, groups);
    if (dearest(losses, drawn) === key) first += 1;
  }
  return first / RESAMPLES;
}

/** Fisher and Yates's shuffle: in order of time, dealing would follow the gym's weekly order of athletes. */
function shuffle(items: number[], generator: RandomGenerator): void {
  for (let last = items.length - 1; last > 0; last -= 1) {
    const other = randomInteger(generator, last + 1);
    const kept = items[last] ?? 0;
    items[last] = items[other] ?? 0;
    items[other] = kept;
  }
}

function dearest(losses: ReadonlyMap<string, Float64Array>, drawn: Int32Array): string | null {
  let name: string | null = null;
  let most = Number.NEGATIVE_INFINITY;
  for (const [own, values] of losses) {
    let sum = 0;
    for (let draw = 0; draw < drawn.length; draw += 1) sum += values[drawn[draw] ?? 0] ?? 0;
    if (sum > most) {
      most = sum;
      name = own;
    }
  }
  return name;
}
