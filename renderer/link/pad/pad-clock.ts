import { bestReading, type Exchange, type TimedReading } from '../../../shared-types/night/clock.ts';
import type { TimeSource } from '../clock.ts';
import { type Observable, settable } from '../observable.ts';

/**
 * How this page's monotonic clock stands to the desk's. It never steps back, whatever the phone's own time of day does
 * meanwhile; where it stood still while the phone slept, the next exchanges contradict the earlier ones and replace them.
 */
export interface PadClock {
  /** The reading to trust, its offset against the page's monotonic clock; null before the first answer. */
  readonly reading: Observable<TimedReading | null>;
  /** The desk's wall clock now, milliseconds since 1970 UTC, and how far off it may be; null before the first answer. */
  readonly deskNow: () => { readonly at: number; readonly uncertaintyMs: number } | null;
  /**
   * What is kept with a set: the desk's time of day less the phone's, and how far off that may be. Null before the first
   * answer.
   */
  readonly alignment: () => { readonly offsetMs: number; readonly uncertaintyMs: number } | null;
  /**
   * The time stamp on this page (as `performance.now()`) of an instant on the desk's clock: where a heat's go lies on a
   * set's clock. Null before the first answer.
   */
  readonly timeStampOf: (deskTime: number) => number | null;
  readonly stop: () => void;
}

export interface ExchangeTimings {
  /** Exchanges in quick succession after each beginning of a connection; the clock filter keeps the last eight. */
  readonly burst: number;
  readonly burstMs: number;
  readonly steadyMs: number;
}

const usual: ExchangeTimings = { burst: 8, burstMs: 150, steadyMs: 20_000 };
const kept = 8;
const page: TimeSource = { wall: () => Date.now(), now: () => performance.now() };

/** Both halves of an exchange, as the desk answers them. */
export type AskClock = () => Promise<{ readonly received: number; readonly answered: number }>;

/** Aligns for as long as it is not stopped. @param whenConnected resolves while the desk is there */
export function alignClock(
  ask: AskClock,
  whenConnected: () => Promise<void>,
  source: TimeSource = page,
  timings: ExchangeTimings = usual,
): PadClock {
  const reading = settable<TimedReading | null>(null);
  const exchanges: Exchange[] = [];
  let over = false;
  const { now } = source;
  const best = (): TimedReading | null => bestReading(exchanges, now());

  async function run(): Promise<void> {
    let quick = timings.burst;
    while (!over) {
      await whenConnected();
      if (over) return;
      const sent = now();
      const answer = await ask().catch(() => null);
      if (answer === null) {
        // After a break the network may be another one: it is measured anew.
        quick = timings.burst;
        await pause(timings.burstMs);
        continue;
      }
      exchanges.push({ sent, ...answer, back: now() });
      exchanges.splice(0, exchanges.length - kept);
      dropOldClock(exchanges);
      reading.set(best());
      quick = Math.max(0, quick - 1);
      await pause(quick > 0 ? timings.burstMs : timings.steadyMs);
    }
  }

  void run();
  return {
    reading,
    deskNow: () => {
      const trusted = best();
      return trusted === null ? null : { at: now() + trusted.offset, uncertaintyMs: trusted.uncertainty };
    },
    alignment: () => {
      const trusted = best();
      if (trusted === null) return null;
      return { offsetMs: now() + trusted.offset - source.wall(), uncertaintyMs: trusted.uncertainty };
    },
    timeStampOf: (deskTime) => {
      const trusted = best();
      return trusted === null ? null : deskTime - trusted.offset;
    },
    stop: () => {
      over = true;
    },
  };
}

/**
 * Forgets exchanges that the newest one contradicts: their offsets differ by more than both may be off, so a clock was
 * set meanwhile. The clock filter alone would trust an old, quick exchange for minutes.
 */
function dropOldClock(exchanges: Exchange[]): void {
  const newest = exchanges.at(-1);
  if (newest === undefined) return;
  const latest = bestReading([newest], newest.back);
  const stays = exchanges.filter((one) => {
    const earlier = bestReading([one], newest.back);
    if (latest === null || earlier === null) return false;
    return Math.abs(earlier.offset - latest.offset) <= earlier.uncertainty + latest.uncertainty + rounding;
  });
  exchanges.splice(0, exchanges.length, ...stays);
}

/** The desk's clock is read in whole milliseconds. */
const rounding = 2;

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
