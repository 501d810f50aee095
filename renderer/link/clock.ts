/**
 * The clock of a running set: whole milliseconds since its go. Within one page load it is monotonic (`performance.now`);
 * after a reload it is set from the go's wall clock, and never stands before the last event of the log.
 */
export interface SetClock {
  /** Wall clock at go, milliseconds since 1970 UTC: the go event carries it. */
  readonly wallClock: number;
  /** Whole milliseconds since go at a time stamp of this page (`eventTime`, `performance.now()`). */
  readonly at: (timeStamp: number) => number;
  /** Whole milliseconds since go, now. */
  readonly now: () => number;
  /** True where the wall clock had gone back behind the last event, so that the time since then is a lower bound. */
  readonly behind: boolean;
}

/**
 * What the clock is read from. The page's own origin (`performance.timeOrigin`) is not asked: where `performance.now` stands
 * still while the computer sleeps, the two together lag behind the time of day.
 */
export interface TimeSource {
  /** Time of day, milliseconds since 1970 UTC. */
  wall(): number;
  /** The page's monotonic clock, milliseconds. */
  now(): number;
}

const page: TimeSource = { wall: () => Date.now(), now: () => performance.now() };

/** The clock of a set that begins at this time stamp (`eventTime` of the tap, or `performance.now()`). */
export function startClock(goTimeStamp: number, source: TimeSource = page): SetClock {
  return clock(goTimeStamp, Math.round(source.wall() - source.now() + goTimeStamp), 0, false, source);
}

/**
 * The clock of a set that began in another page load.
 * @param wallClock the go's wall clock, milliseconds since 1970 UTC
 * @param lastAt `at` of the latest event of the log, milliseconds since go
 */
export function resumeClock(wallClock: number, lastAt: number, source: TimeSource = page): SetClock {
  const go = wallClock - (source.wall() - source.now());
  const behind = source.now() - go < lastAt;
  return clock(behind ? source.now() - lastAt : go, wallClock, lastAt, behind, source);
}

function clock(go: number, wallClock: number, floor: number, behind: boolean, source: TimeSource): SetClock {
  const at = (timeStamp: number): number => Math.max(floor, Math.round(timeStamp - go));
  return { wallClock, at, now: () => at(source.now()), behind };
}

/** A tap that waited longer than this in the browser's queue is not believed, milliseconds. */
const oldestTap = 30_000;

/**
 * When an input happened, milliseconds on the page's monotonic clock: the event's own time stamp, not the time at which
 * it was handled. Events made by scripts and drivers may carry none that can be used; then it is now.
 */
export function eventTime(event: Pick<Event, 'timeStamp'>, source: Pick<TimeSource, 'now'> = page): number {
  const now = source.now();
  const { timeStamp } = event;
  return timeStamp > 0 && timeStamp <= now && now - timeStamp <= oldestTap ? timeStamp : now;
}
