import type { Formats } from '../formats.ts';

/** The time ledger of a set. */
export function ledgerWords({ list }: Formats) {
  return {
    work: 'Work',
    noRep: 'No-reps',
    break: 'Breaks',
    start: 'Start',
    /** One of many sets: its date, its clock, its parts. */
    row: (name: string, clock: string, parts: readonly string[]) => `${name}, ${clock}: ${list(parts)}`,
    axis: 'Clock, minutes and seconds',
    rowsHint: 'Point at a set, or walk with the arrow keys; Enter opens it.',
    summary: (clock: string, parts: readonly string[]) => `Of ${clock}: ${list(parts)}.`,
  };
}
