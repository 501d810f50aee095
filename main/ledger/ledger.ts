import type { ReadConnection, WriteConnection } from './connection.ts';
import { type Copy, copyChecked, listCopies, rotate, takeCopy } from './copies.ts';
import { type DrillReads, type Drills, drillReads, drillWrites } from './drills.ts';
import { LedgerError } from './errors.ts';
import { type FactWrites, factWrites } from './fact-writer.ts';
import type { Lock } from './lock.ts';
import { type Log, type LogReads, logReads, logWrites } from './log.ts';
import { type NightReads, type Nights, nightReads, nightWrites } from './nights.ts';
import { type People, type PeopleReads, peopleReads, peopleWrites } from './people.ts';
import { type Reports, reports } from './reports.ts';
import { type Holdings, holdings, holdingsOfCopy, putInPlace, soundCopy } from './restore.ts';
import { type RibbonReads, ribbonReads } from './ribbons.ts';
import { dayOf } from './rotation.ts';
import { beginSession, endSession } from './session.ts';
import { type SetReads, type Sets, setReads, setWrites } from './sets.ts';
import { type SettingReads, type Settings, settingReads, settingWrites } from './settings.ts';
import { type SheetReads, type Sheets, sheetReads, sheetWrites } from './sheets.ts';

/** The ledger as a report's worker sees it: nothing in it writes. */
export interface LedgerReader {
  readonly path: string;
  readonly people: PeopleReads;
  readonly sheets: SheetReads;
  readonly sets: SetReads;
  readonly log: LogReads;
  readonly drills: DrillReads;
  readonly nights: NightReads;
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
  readonly drills: Drills;
  readonly nights: Nights;
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
   * reader first. Errors: `unknown-copy`, `damaged`, `newer`, `in-use` (somebody still writes or reads), `full`; the database
   * is then as it was, and may be closed: every further call says so.
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
    drills: drillReads(connection),
    nights: nightReads(connection),
    settings: settingReads(connection),
    reports: reports(connection),
    ribbons: ribbonReads(connection),
    close: () => connection.close(),
  };
}

export function ledgerOn(connection: WriteConnection, lock: Lock, now: () => number): Ledger {
  const session = beginSession(connection, now());
  let closed = false;
  const close = () => {
    if (closed) return;
    closed = true;
    try {
      endSession(connection, session, now());
    } finally {
      lock.release();
    }
  };
  return {
    path: connection.path,
    people: peopleWrites(connection),
    sheets: sheetWrites(connection),
    sets: setWrites(connection),
    log: logWrites(connection, now),
    drills: drillWrites(connection, now),
    nights: nightWrites(connection, now),
    settings: settingWrites(connection, now),
    reports: reports(connection),
    ribbons: ribbonReads(connection),
    facts: factWrites(connection),
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
  let last: Promise<unknown> = Promise.resolve();
  /** Two copies at once would choose one name. */
  const oneByOne = <Result>(work: () => Promise<Result>): Promise<Result> => {
    const next = last.then(work, work);
    last = next;
    return next;
  };
  return {
    list: () => listCopies(path),
    take: () => oneByOne(() => takeCopy(connection, 'asked', now())),
    takeTo: (to) => oneByOne(() => copyChecked(connection, to)),
    daily: () =>
      oneByOne(async () => {
        const today = dayOf(now());
        if (listCopies(path).some((copy) => copy.kind === 'daily' && dayOf(copy.takenAt) === today)) return null;
        const copy = await takeCopy(connection, 'daily', now());
        rotate(path, now());
        return copy;
      }),
    preview: (copy) => ({ copy: holdingsOfCopy(path, copy), now: holdings(connection) }),
    restore: (name) =>
      oneByOne(async () => {
        const copy = await soundCopy(path, name);
        const changes = connection.changes();
        const before = await takeCopy(connection, 'restore', now());
        if (connection.changes() !== changes) {
          throw new LedgerError(
            'in-use',
            `Something was recorded in ${path} while it was copied. End the running sets, then restore again.`,
          );
        }
        const lock = closeFile();
        try {
          putInPlace(path, copy);
        } finally {
          lock.release();
        }
        return { before };
      }),
  };
}
