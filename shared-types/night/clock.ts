/**
 * Clock alignment by round trips (RFC 5905, section 8): a pad asks at `sent` on its own clock, the desk receives at
 * `received` and answers at `answered` on the desk's clock, the pad has the answer at `back` on its own. All four in one
 * unit, here milliseconds; the result is in the same.
 */
export interface Exchange {
  readonly sent: number;
  readonly received: number;
  readonly answered: number;
  readonly back: number;
}

export interface ClockReading {
  /** Desk's clock less the pad's: add it to a reading of the pad's clock to have the desk's. */
  readonly offset: number;
  /** Time on the way, there and back. */
  readonly delay: number;
  /** The true offset lies within this of `offset`, whatever the way there and back took each: half the delay. */
  readonly uncertainty: number;
}

/**
 * theta = ((T2 - T1) + (T3 - T4)) / 2 and delta = (T4 - T1) - (T3 - T2); a delay below 0 can only be rounding and counts as 0.
 * @internal exported for the tests against published exchanges
 */
export function readClock({ sent, received, answered, back }: Exchange): ClockReading {
  const offset = (received - sent + (answered - back)) / 2;
  const delay = Math.max(0, back - sent - (answered - received));
  return { offset, delay, uncertainty: delay / 2 };
}

/** A clock of a pad drifts against the desk's by no more than this, parts per million (RFC 5905, PHI: 15 ppm). */
const DRIFT = 15e-6;

/** An exchange with what it told; `ClockReading.uncertainty` grows from `at` (the pad's clock) on. */
export interface TimedReading extends ClockReading {
  readonly at: number;
}

/**
 * The reading to trust at `now` on the pad's clock: the one with the least uncertainty, each grown by 15 ppm since it was taken
 * (RFC 5905's clock filter takes the least delay of the last eight). Null without a reading.
 */
export function bestReading(exchanges: readonly Exchange[], now: number): TimedReading | null {
  return exchanges
    .slice(-8)
    .map((exchange): TimedReading => {
      const reading = readClock(exchange);
      const age = Math.max(0, now - exchange.back);
      return { ...reading, uncertainty: reading.uncertainty + DRIFT * age, at: exchange.back };
    })
    .reduce<TimedReading | null>(
      (best, reading) => (best === null || reading.uncertainty < best.uncertainty ? reading : best),
      null,
    );
}
