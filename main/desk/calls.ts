import { implement } from '@orpc/server';
import { deskContract } from '../../shared-types/contract/contract.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Changes } from './changes.ts';
import type { FactsKeeper } from './facts-keeper.ts';
import { asFailure } from './failures.ts';
import type { ReportsThread } from './reports/thread-client.ts';

/** What every call of the desk is answered from. */
export interface DeskParts {
  readonly ledger: Ledger;
  readonly changes: Changes;
  readonly facts: FactsKeeper;
  readonly reports: ReportsThread;
  readonly about: { version: string; host: 'electron' | 'browser'; databasePath: string; demo: boolean };
  readonly now: () => number;
}

/** The contract, ready to be answered; whatever goes wrong inside leaves as one of its typed refusals. */
export const calls = implement(deskContract).use(async ({ next }) => {
  try {
    return await next();
  } catch (error) {
    throw asFailure(error);
  }
});
