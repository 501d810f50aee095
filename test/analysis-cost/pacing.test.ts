import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setSums } from '../../main/analysis/cost/set-sums.ts';
import { type Pacing, pacing } from '../../main/analysis/pacing/pacing.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import { anyLog, SET } from '../log/arbitrary.ts';
import { logOf } from './logs.ts';

function paceOf(words: string) {
  const state = foldSet(SET, logOf(words));
  const { attempts, ledger } = setSums(state, { resamples: 1 });
  return pacing({ rows: attempts, breaks: state.breaks, clock: ledger.clock });
}

function paced(words: string): Pacing {
  const answer = paceOf(words);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.value;
}

/** Reps whose cycle is `cycle(i)` ms, `noRep(i)` turning single ones into a no-rep and a rep. */
function set(count: number, cycle: (i: number) => number, noRep: (i: number) => boolean = () => false): string {
  let at = 3_000;
  const words = ['3000+'];
  for (let i = 1; i < count; i += 1) {
    at += cycle(i);
    if (noRep(i)) {
      words.push(`${at}-depth`);
      at += cycle(i);
    }
    words.push(`${at}+`);
  }
  return words.join(' ');
}

/** Noise that is the same each time: an uneven step of up to 60 ms either way. */
const uneven = (i: number) => ((i * 37) % 13) * 10 - 60;

describe('pacing of a set', () => {
  it('is even, fading or rising by the drift of the clean cycles', () => {
    expect(paced(set(60, (i) => 2_000 + uneven(i)))).toMatchObject({ verdict: 'even', cleanCycles: 59 });
    expect(paced(set(60, (i) => 2_000 + 8 * i + uneven(i))).verdict).toBe('fading');
    expect(paced(set(60, (i) => 2_500 - 8 * i + uneven(i))).verdict).toBe('rising');
    expect(paced(set(10, (i) => 2_000 + 10 * uneven(i))).verdict).toBe('cannot-tell');
  });

  it('gives the drift over the set as a share of the median cycle, and the quarters', () => {
    // Cycles 2000, 2020, … 2980 ms over attempts 2 to 51; the line rises 20 ms an attempt over 50 attempts.
    const pace = paced(set(51, (i) => 1_980 + 20 * i));
    expect(pace.medianCycle).toBeCloseTo(2.49);
    expect(pace.drift.estimate).toBeCloseTo(1 / 2.49);
    // Attempts 2 to 12 (cycles 1 to 11) and 39 to 51 (38 to 50).
    expect(pace.firstQuarter).toBeCloseTo(1.98 + 0.02 * 6);
    expect(pace.lastQuarter).toBeCloseTo(1.98 + 0.02 * 44);
    expect(pace.quarterChange).toBeCloseTo(2.86 / 2.1 - 1);
  });

  it('adds up the breaks', () => {
    const words = `${set(20, () => 2_000)} 42000( 47000) 49000+ 49500( 60000+ 61000(`;
    const state = foldSet(SET, logOf(words));
    const { attempts } = setSums(state, { resamples: 1 });
    const pace = pacing({ rows: attempts, breaks: state.breaks, clock: 64_000 });
    expect(pace.ok && pace.value.breaks).toEqual({ count: 3, seconds: 5 + 10.5 + 3, longest: 10.5 });
  });

  it('tells whether no-reps follow a fast start', () => {
    const fast = (i: number) => (i < 20 ? 1_700 : 2_000) + uneven(i);
    expect(paced(set(80, fast, (i) => i > 30 && i % 4 === 0)).start).toMatchObject({ isFast: true, followed: 'yes' });
    expect(paced(set(80, fast)).start).toMatchObject({ isFast: true, followed: 'cannot-tell' });
    expect(
      paced(
        set(
          80,
          (i) => 2_000 + uneven(i),
          (i) => i > 30 && i % 4 === 0,
        ),
      ).start,
    ).toMatchObject({
      isFast: false,
      followed: 'no',
    });
  });

  it('is a typed error with few clean cycles, and finite on any log', () => {
    const few = paceOf('3000+ 5000+ 7000+');
    expect(few.ok ? '' : few.error.kind).toBe('too-few-data');
    fc.assert(
      fc.property(anyLog, (log) => {
        const state = foldSet(SET, log);
        const { attempts, ledger } = setSums(state, { resamples: 1 });
        const pace = pacing({ rows: attempts, breaks: state.breaks, clock: ledger.clock });
        if (pace.ok) expect(JSON.parse(JSON.stringify(pace.value))).toEqual(pace.value);
      }),
    );
  });
});
