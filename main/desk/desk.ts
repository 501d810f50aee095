import { shippedSheets } from '../../shared-types/sheets/shipped.ts';
import type { DamagedLedger } from '../ledger/damaged.ts';
import { LedgerError } from '../ledger/errors.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { openLedger } from '../ledger/open.ts';
import { aboutCalls } from './about.ts';
import { calls, type DeskParts } from './calls.ts';
import { Changes } from './changes.ts';
import { keepDailyCopy } from './daily-copy.ts';
import { fillDemo } from './demo/fill-demo.ts';
import { drillsCalls } from './drills.ts';
import { FactsKeeper } from './facts-keeper.ts';
import { NightBook } from './nights/book.ts';
import { type PadRouter, padRouter } from './nights/pad-calls.ts';
import { nightsCalls } from './nights.ts';
import { peopleCalls } from './people.ts';
import { startReportsThread } from './reports/thread-client.ts';
import { reportsCalls } from './reports.ts';
import { reviewCalls } from './review.ts';
import { setsCalls } from './sets.ts';
import { settingsCalls } from './settings.ts';
import { standardsCalls } from './standards.ts';

export interface DeskOptions {
  readonly ledgerPath: string;
  readonly host: 'electron' | 'browser';
  readonly demo: boolean;
  readonly version: string;
  /** Milliseconds since 1970 UTC; `Date.now` by default. */
  readonly now?: () => number;
}

export type DeskRouter = ReturnType<typeof routerOf>;

export interface Desk {
  readonly router: DeskRouter;
  /** What pads on the gym's network may ask; every call needs the context `{ night, device }` of a device let in. */
  readonly padRouter: PadRouter;
  readonly ledger: Ledger;
  /** Resolves once lists and reports show all that is in the logs. */
  settle(): Promise<void>;
  /** Stops taking work, lets what runs end, closes the database. */
  close(): Promise<void>;
}

/** Why the desk could not be opened, in words for its user; a damaged database comes with what can be done. */
export interface DeskProblem {
  readonly kind: string;
  readonly message: string;
  readonly path: string;
  readonly damaged: DamagedLedger | null;
}

export type OpenedDesk =
  | { readonly ok: true; readonly desk: Desk }
  | { readonly ok: false; readonly problem: DeskProblem };

/** Opens the database and answers the contract from it. Never throws for what a user can mend: see `DeskProblem`. */
export async function openDesk(options: DeskOptions): Promise<OpenedDesk> {
  const now = options.now ?? Date.now;
  try {
    const opened = await openLedger(options.ledgerPath, { now });
    if (opened.state === 'damaged') return { ok: false, problem: damagedProblem(opened) };
    const desk = deskOn(opened.ledger, options, now);
    // The demonstration is shown whole from its first screen on.
    if (options.demo) await desk.settle();
    return { ok: true, desk };
  } catch (error) {
    if (!(error instanceof LedgerError)) throw error;
    return {
      ok: false,
      problem: { kind: error.code, message: error.message, path: options.ledgerPath, damaged: null },
    };
  }
}

function deskOn(ledger: Ledger, options: DeskOptions, now: () => number): Desk {
  ledger.sheets.seed(shippedSheets);
  if (options.demo) fillDemo(ledger, now());
  const changes = new Changes();
  const reports = startReportsThread(ledger.path);
  const facts = new FactsKeeper(ledger, reports, changes);
  const about = {
    version: options.version,
    host: options.host,
    databasePath: ledger.path,
    demo: options.demo,
  };
  facts.catchUp();
  const dailyCopy = keepDailyCopy(ledger.copies);
  const parts: DeskParts = { ledger, changes, facts, reports, about, now };
  const book = new NightBook(parts);
  return {
    router: routerOf(parts, book),
    padRouter: padRouter(parts, book),
    ledger,
    settle: () => facts.settle(),
    close: async () => {
      await dailyCopy.close();
      await facts.close();
      await reports.close();
      ledger.close();
    },
  };
}

function routerOf(parts: DeskParts, book: NightBook) {
  return calls.router({
    desk: aboutCalls(parts),
    drills: drillsCalls(parts),
    nights: nightsCalls(parts, book),
    people: peopleCalls(parts),
    reports: reportsCalls(parts),
    review: reviewCalls(parts),
    sets: setsCalls(parts),
    settings: settingsCalls(parts),
    standards: standardsCalls(parts),
  });
}

function damagedProblem(damaged: DamagedLedger): DeskProblem {
  const { path, problems, lastGood } = damaged;
  const offer =
    lastGood === null
      ? 'There is no sound copy.'
      : `The last good copy was taken on ${new Date(lastGood.takenAt).toISOString().slice(0, 16).replace('T', ' ')} UTC.`;
  const message = `The database ${path} is damaged: ${problems.join('; ')}. Nothing was changed. ${offer}`;
  return { kind: 'damaged', message, path, damaged };
}
