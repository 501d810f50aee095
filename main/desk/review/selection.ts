import type { ReviewFilter } from '../../../shared-types/contract/review/filter.ts';
import type { SetFilter } from '../../ledger/filter.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { ReviewReason, ReviewSet } from '../../ledger/review.ts';

/** What a review reads of the ledger. */
export type ReviewLedger = Pick<LedgerReader, 'reports' | 'people' | 'sheets' | 'sets' | 'log' | 'ribbons'>;

/** The sets of a filter, oldest first, with their reasons. */
export interface Selection {
  readonly filter: SetFilter;
  readonly sets: readonly ReviewSet[];
  readonly reasons: readonly ReviewReason[];
  /** Place of a set in `sets` by its number; -1 for one that is not there. */
  readonly placeOf: (n: number) => number;
}

export function readSelection({ reports }: Pick<ReviewLedger, 'reports'>, given: ReviewFilter): Selection {
  const filter = ledgerFilter(given);
  const sets = reports.reviewSets(filter);
  return { filter, sets, reasons: reports.reviewReasons(filter), placeOf: placesOf(sets) };
}

/** A plain column instead of a map: there may be a hundred thousand look-ups. */
function placesOf(sets: readonly ReviewSet[]): Selection['placeOf'] {
  const most = sets.reduce((max, set) => Math.max(max, set.n), 0);
  const places = new Int32Array(most + 1).fill(-1);
  for (const [place, set] of sets.entries()) places[set.n] = place;
  return (n) => places[n] ?? -1;
}

/** The filter of the contract as the ledger's. */
export function ledgerFilter(given: ReviewFilter): SetFilter {
  return {
    ...(given.athlete === undefined ? {} : { athletes: [given.athlete] }),
    ...(given.judge === undefined ? {} : { judges: [given.judge] }),
    ...(given.sheet === undefined ? {} : { sheets: [{ id: given.sheet }] }),
    ...(given.loadsKg === undefined ? {} : { loadsKg: given.loadsKg }),
    ...(given.before === undefined ? {} : { before: given.before }),
    ...(given.tags === undefined ? {} : { tags: given.tags }),
    ...(given.from === undefined ? {} : { from: given.from }),
    ...(given.to === undefined ? {} : { to: given.to }),
  };
}

export function sum<Item>(items: readonly Item[], of: (item: Item) => number): number {
  let total = 0;
  for (const item of items) total += of(item);
  return total;
}
