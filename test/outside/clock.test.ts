import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestReading, readClock } from '../../shared-types/night/clock.ts';
import { list, number, publishedEntries } from './published-entry.ts';

function entry(id: string) {
  const found = publishedEntries.find((item) => item.id === id);
  if (found === undefined) throw new Error(`There is no entry ${id}.`);
  return found;
}

describe('clock alignment', () => {
  // RFC 5905, section 8; the times are an exercise of Coulouris, Dollimore, Kindberg & Blair, Distributed Systems. Times and
  // offset were read in a stored student solution, delay and accuracy recomputed.
  test('the published exchange of Coulouris', () => {
    const { input, published } = entry('18-ntp-coulouris');
    const reading = readClock({
      sent: number(input, 'T1'),
      received: number(input, 'T2'),
      answered: number(input, 'T3'),
      back: number(input, 'T4'),
    });
    const printed = Object.fromEntries(Object.entries(published).map(([key, value]) => [key, Number(value)]));
    expect(reading.offset).toBeCloseTo(printed.offset ?? Number.NaN, 4);
    expect(reading.delay).toBeCloseTo(printed.delay ?? Number.NaN, 3);
    expect(reading.uncertainty).toBeCloseTo(printed.accuracy ?? Number.NaN, 4);
  });

  // Cristian's method in the same book: the shortest of three round trips is taken. Question read in a stored text, answer from memory.
  test('the published choice among three round trips', () => {
    const trips = list(entry('18-cristian').input, 'rtt_ms');
    // The desk's clock at each answer, milliseconds after 10:54; sent at 0 on the asking clock.
    const answers = [23_674, 25_450, 28_342];
    const exchanges = trips.map((back, index) => {
      const told = answers[index] ?? 0;
      return { sent: 0, received: told, answered: told, back };
    });
    const best = bestReading(exchanges, Math.max(...trips));
    expect((best?.at ?? 0) + (best?.offset ?? 0)).toBeCloseTo(28_352, 6);
    expect(best?.uncertainty).toBeCloseTo(10, 3);
  });

  const exchange = fc.record({
    truth: fc.double({ min: -5_000, max: 5_000, noNaN: true }),
    out: fc.double({ min: 0, max: 500, noNaN: true }),
    work: fc.double({ min: 0, max: 50, noNaN: true }),
    home: fc.double({ min: 0, max: 500, noNaN: true }),
    sent: fc.double({ min: 0, max: 1e7, noNaN: true }),
  });
  type Way = { truth: number; out: number; work: number; home: number; sent: number };
  const asSeen = ({ truth, out, work, home, sent }: Way) => ({
    sent,
    received: sent + out + truth,
    answered: sent + out + work + truth,
    back: sent + out + work + home,
  });

  test('the truth lies within the uncertainty, whatever the two ways took', () => {
    fc.assert(
      fc.property(exchange, (way) => {
        const reading = readClock(asSeen(way));
        expect(Math.abs(reading.offset - way.truth)).toBeLessThanOrEqual(reading.uncertainty + 1e-6);
        expect(reading.delay).toBeCloseTo(way.out + way.home, 5);
      }),
    );
  });

  test('ways of equal length give the truth itself', () => {
    const reading = readClock(asSeen({ truth: -1_234, out: 40, work: 3, home: 40, sent: 1_000 }));
    expect(reading).toEqual({ offset: -1_234, delay: 80, uncertainty: 40 });
  });

  test('of several exchanges the one with the least uncertainty is trusted, until its age outweighs it', () => {
    const quick = asSeen({ truth: 100, out: 1, work: 0, home: 1, sent: 0 });
    const slow = asSeen({ truth: 100, out: 5, work: 0, home: 15, sent: 1_000_000 });
    // 15 ppm of 500 s are 7.5 ms, of 1,000 s 15 ms: the quick one of 1 ms is trusted first, then the new one of 10 ms.
    expect(bestReading([quick, slow], 500_000)?.uncertainty).toBeCloseTo(8.5, 2);
    expect(bestReading([quick, slow], 1_000_020)?.at).toBe(slow.back);
    expect(bestReading([], 0)).toBeNull();
    expect(bestReading([quick, ...Array.from({ length: 8 }, () => slow)], 0)?.at).toBe(slow.back);
  });
});
