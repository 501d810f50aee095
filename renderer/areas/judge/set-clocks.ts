import type { SetState } from '../../../shared-types/log/state.ts';
import { resumeClock, type SetClock, startClock } from '../../link/clock.ts';

/** A set's clock, and whether it was taken up from another load of the page. */
export interface ScreenClock extends SetClock {
  readonly resumed: boolean;
}

/** The clocks of the sets that this page has seen run: one that began here stays on the page's monotonic clock. */
const clocks = new Map<string, ScreenClock>();

/** Starts the clock of a set at this time stamp of the page. */
export function beginClock(set: string, goTimeStamp: number): ScreenClock {
  const clock = { ...startClock(goTimeStamp), resumed: false };
  clocks.set(set, clock);
  return clock;
}

/** Whether the set began on this page a moment ago. */
export function justBegun(set: string): boolean {
  const clock = clocks.get(set);
  return clock !== undefined && !clock.resumed && clock.now() < 5_000;
}

/** The clock of a set that has begun; null before go. */
export function clockOf(set: string, state: Pick<SetState, 'startedAt' | 'lastAt'>): ScreenClock | null {
  const known = clocks.get(set);
  if (known !== undefined) return known;
  if (state.startedAt === null) return null;
  const clock = { ...resumeClock(state.startedAt, state.lastAt), resumed: true };
  clocks.set(set, clock);
  return clock;
}
