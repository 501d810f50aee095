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
}

export function readSelection({ reports }: Pick<ReviewLedger, 'reports'>, given: ReviewFilter): Selection {
  const filter = ledgerFilter(given);
  return { filter, sets: reports.reviewSets(filter), reasons: reports.reviewReasons(filter) };
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
  return items.reduce((total, item) => total + of(item), 0);
}
