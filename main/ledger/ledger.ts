import type { ReadConnection, WriteConnection } from './connection.ts';
import { type Copy, copyChecked, listCopies, rotate, takeCopy } from './copies.ts';
import { type FactWrites, factWrites } from './fact-writer.ts';
import type { Lock } from './lock.ts';
import { type Log, type LogReads, logReads, logWrites } from './log.ts';
import { type People, type PeopleReads, peopleReads, peopleWrites } from './people.ts';
import { type Reports, reports } from './reports.ts';
import { type Holdings, holdings, holdingsOfCopy, putInPlace, soundCopy } from './restore.ts';
import { type RibbonReads, ribbonReads } from './ribbons.ts';
import { type SetReads, type Sets, setReads, setWrites } from './sets.ts';
import { type SettingReads, type Settings, settingReads, settingWrites } from './settings.ts';
import { type SheetReads, type Sheets, sheetReads, sheetWrites } from './sheets.ts';
import { StaleSets } from './stale-sets.ts';

/** The ledger as a report's worker sees it: nothing in it writes. */
export interface LedgerReader {
  readonly path: string;
  readonly people: PeopleReads;
  readonly sheets: SheetReads;
  readonly sets: SetReads;
  readonly log: LogReads;
  readonly settings: SettingReads;
  readonly reports: Reports;
  readonly ribbons: RibbonReads;
  close(): void;
}

/** The one writer. Every call but those of `copies` runs to its end before it returns; what it wrote is on the disk. */
export interface Ledger {
  readonly path: string;
  readonly people: People;
  readonly sheets: Sheets;
  readonly sets: Sets;
  readonly log: Log;
  readonly settings: Settings;
  readonly reports: Reports;
  readonly ribbons: RibbonReads;
  readonly facts: FactWrites;
  readonly copies: Copies;
  /** Closes the file and lets another program have it. Closing twice does nothing. */
  close(): void;
}

export interface Copies {
  /** Newest first. */
  list(): Copy[];
  /** Takes a copy because somebody asked. Errors: `full`, `read-only`, `disk`, `damaged`. */
  take(): Promise<Copy>;
  /** Takes a checked copy to a file of the user's choice. Errors: also `conflict` where that is there. */
  takeTo(path: string): Promise<void>;
  /** Takes today's copy unless there is one, and lets old daily ones go; null where there was nothing to do. */
  daily(): Promise<Copy | null>;
  /** What a copy holds, beside what the database holds now. Errors: `unknown-copy`, `damaged`. */
  preview(copy: string): { readonly copy: Holdings; readonly now: Holdings };
  /**
   * Copies what is there now, closes the ledger and puts the copy in its place; open the ledger again afterwards. Close every
   * reader first. Errors: `unknown-copy`, `damaged`, `newer`, `in-use`, `full`; the database is then as it was, and closed
   * only if the message came after the closing.
   */
  restore(copy: string): Promise<{ readonly before: Copy }>;
}

export function readerOn(connection: ReadConnection): LedgerReader {
  return {
    path: connection.path,
    people: peopleReads(connection),
    sheets: sheetReads(connection),
    sets: setReads(connection),
    log: logReads(connection),
    settings: settingReads(connection),
    reports: reports(connection),
    ribbons: ribbonReads(connection),
    close: () => connection.close(),
  };
}

export function ledgerOn(connection: WriteConnection, lock: Lock, now: () => number): Ledger {
  const staleSets = new StaleSets(connection);
  let closed = false;
  const close = () => {
    if (closed) return;
    closed = true;
    try {
      connection.pragma('optimize');
      connection.close();
    } finally {
      lock.release();
    }
  };
  return {
    path: connection.path,
    people: peopleWrites(connection),
    sheets: sheetWrites(connection),
    sets: setWrites(connection),
    log: logWrites(connection, staleSets, now),
    settings: settingWrites(connection, now),
    reports: reports(connection),
    ribbons: ribbonReads(connection),
    facts: factWrites(connection, staleSets),
    copies: copiesOf(connection, now, () => {
      closed = true;
      connection.close();
      return lock;
    }),
    close,
  };
}

function copiesOf(connection: WriteConnection, now: () => number, closeFile: () => Lock): Copies {
  const { path } = connection;
  return {
    list: () => listCopies(path),
    take: () => takeCopy(connection, 'asked', now()),
    takeTo: (to) => copyChecked(connection, to),
    daily: async () => {
      const today = new Date(now()).toDateString();
      const taken = listCopies(path).some(
        (copy) => copy.kind === 'daily' && new Date(copy.takenAt).toDateString() === today,
      );
      if (taken) return null;
      const copy = await takeCopy(connection, 'daily', now());
      rotate(path);
      return copy;
    },
    preview: (copy) => ({ copy: holdingsOfCopy(path, copy), now: holdings(connection) }),
    restore: async (name) => {
      const copy = await soundCopy(path, name);
      const before = await takeCopy(connection, 'restore', now());
      const lock = closeFile();
      try {
        putInPlace(path, copy);
      } finally {
        lock.release();
      }
      return { before };
    },
  };
}
