import type { SetRecord } from '../../shared-types/contract/sets.ts';
import type { LedgerReader } from '../ledger/ledger.ts';

/** What reading a set needs of the ledger; its writer and its readers both have it. */
export type DeskReads = Pick<LedgerReader, 'people' | 'sheets' | 'sets' | 'log' | 'ribbons'>;

/** A set with all that it points at. Errors: `unknown-set`. */
export function readRecord(ledger: DeskReads, id: string): SetRecord {
  const setup = ledger.sets.get(id);
  return {
    setup,
    sheet: ledger.sheets.get(setup.sheet.id, setup.sheet.version),
    athlete: ledger.people.get(setup.athlete),
    judge: ledger.people.get(setup.judge),
    events: ledger.log.events(id),
  };
}
