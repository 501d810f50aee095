import type { Copy } from './copies.ts';

const DAYS_KEPT = 7;
const WEEKS_KEPT = 4;
const DAY_MS = 86_400_000;

/**
 * Which daily copies may go: all but the newest of each of the last seven days that have one, and the newest of each of the
 * last four weeks that have one. Copies of the other kinds stay until somebody removes them, and so do those dated after `now`:
 * the clock was wrong then or is wrong now, and they must not push out the others.
 */
export function toRotateOut(copies: readonly Copy[], now: number): Copy[] {
  const daily = copies
    .filter((copy) => copy.kind === 'daily' && copy.takenAt <= now)
    .toSorted((one, other) => other.takenAt - one.takenAt);
  const kept = new Set([...newestOfEach(daily, dayOf, DAYS_KEPT), ...newestOfEach(daily, weekOf, WEEKS_KEPT)]);
  return daily.filter((copy) => !kept.has(copy));
}

/** `copies` newest first. */
function newestOfEach(copies: readonly Copy[], period: (at: number) => number, periods: number): Copy[] {
  const newest = new Map<number, Copy>();
  for (const copy of copies) {
    if (!newest.has(period(copy.takenAt))) newest.set(period(copy.takenAt), copy);
  }
  return [...newest.values()].slice(0, periods);
}

/** Days since 1970 in UTC: the day of a copy does not change with the time zone. */
export function dayOf(at: number): number {
  return Math.floor(at / DAY_MS);
}

/** Weeks from Monday to Sunday; 1 January 1970 was a Thursday. */
function weekOf(at: number): number {
  return Math.floor((dayOf(at) + 3) / 7);
}
