import type { Formats } from '../formats.ts';

/** The time ledger of a set. */
export function ledgerWords({ list }: Formats) {
  return {
    work: 'Work',
    noRep: 'No-reps',
    break: 'Breaks',
    start: 'Start',
    summary: (clock: string, parts: readonly string[]) => `Of ${clock}: ${list(parts)}.`,
  };
}
