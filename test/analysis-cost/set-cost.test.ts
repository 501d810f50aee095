import { describe, expect, it } from 'vitest';
import { attemptTable } from '../../main/analysis/cost/attempt-table.ts';
import { type SetCostOptions, setCost } from '../../main/analysis/cost/set-cost.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import { SET } from '../log/arbitrary.ts';
import { logOf } from './logs.ts';

// Expected values here are worked by hand from the definitions in main/analysis/cost/README.md.

function costOf(words: string, options: SetCostOptions = {}) {
  return setCost(foldSet(SET, logOf(words)), options);
}

/** Counted reps every two seconds from `from` on, in shorthand. */
function reps(count: number, from: number, every = 2_000): string {
  return Array.from({ length: count }, (_, i) => `${from + i * every}+`).join(' ');
}

describe('cost of a no-rep', () => {
  // Reps at 4, 6, 8, 10 s; a no-rep at 12 s and its rep at 15.5 s instead of 12 s: 5.5 - 2 = 3.5 s.
  const plain = `${reps(4, 4_000)} 12000-depth 15500+ ${reps(3, 17_500)} 21500.`;

  it('is the time between the counted reps less the expected cycle, split into repeat and disruption', () => {
    const cost = costOf(plain);
    expect(cost).toMatchObject({ method: 'median', cleanCycles: 6, repeat: 2, disruption: 1.5, addedSeconds: 0 });
    expect(cost.total?.estimate).toBeCloseTo(3.5, 12);
    expect(cost.runs).toMatchObject([{ attempts: [5], where: 'within', flags: [], unmarkedPause: 0 }]);
    expect(cost.faults).toMatchObject([{ fault: 'depth', noReps: 1, share: 1 }]);
  });

  it('takes off the breaks that the judge marked, and an expected cycle less of one that a call closed', () => {
    expect(costOf(`${reps(4, 4_000)} 12000-depth 13000( 18000) 20500+ ${reps(3, 22_500)}`).total?.estimate).toBeCloseTo(
      3.5,
    );
    const closed = costOf(`${reps(4, 4_000)} 12000-depth 13000( 20500-depth 23000+ ${reps(3, 25_000)}`);
    // 13 s between the reps, less 2 s for the rep, less 7.5 - 2 s of break.
    expect(closed.total?.estimate).toBeCloseTo(5.5);
    expect(closed.runs[0]?.flags).toEqual(['unmarked-break-end']);
  });

  it('is a local fit where there are ten clean cycles, and follows a drift', () => {
    // Cycles grow from 2.00 s by 20 ms a rep; the no-rep stands where the clean cycle is 2.30 s, and 3 s are lost.
    let at = 4_000;
    const words: string[] = [];
    for (let i = 0; i < 30; i += 1) {
      at += 2_000 + 20 * i;
      if (i === 15) {
        words.push(`${at}-line`);
        at += 3_000;
      }
      words.push(`${at}+`);
    }
    const cost = costOf(words.join(' '));
    expect(cost.method).toBe('local-fit');
    // The attempt number runs one ahead of the rep after the no-rep, so the line has a step of 20 ms there.
    expect(Math.abs((cost.total?.estimate ?? 0) - 3)).toBeLessThan(0.02);
    expect(cost.curve).toHaveLength(31);
  });

  it('asks the history below three clean cycles, and is not estimable without one: never zero', () => {
    const few = '4000+ 6000-depth 9000+ 11000+ 11000.';
    expect(costOf(few, { history: [[2, 2.2, 2.1], [1.9]] })).toMatchObject({ method: 'history', earlierSets: 2 });
    expect(costOf(few, { history: [[2, 2.2, 2.1], [1.9]] }).total?.estimate).toBeCloseTo(5 - 2);
    expect(costOf(few)).toMatchObject({
      method: 'not-estimable',
      total: null,
      repeat: null,
      disruption: null,
      curve: [],
    });
    expect(costOf(few).runs).toMatchObject([{ attempts: [2], cost: null }]);
    expect(costOf(few).faults).toMatchObject([{ fault: 'depth', noReps: 1, seconds: null, share: 1 }]);
    expect(costOf('').total).toEqual({ estimate: 0, lower: 0, upper: 0, level: 0.95 });
  });

  it('names a run at the beginning, and counts it from the first attempt to the first counted rep', () => {
    const cost = costOf(`4000-depth 7000-line 9500+ ${reps(4, 11_500)}`);
    expect(cost.runs).toMatchObject([{ attempts: [1, 2], where: 'start' }]);
    expect(cost.total?.estimate).toBeCloseTo(5.5);
    // Each no-rep by what followed from it: 3.0 s and 2.5 s.
    expect(cost.faults.map((fault) => [fault.fault, fault.seconds?.estimate])).toEqual([
      ['depth', expect.closeTo(3)],
      ['line', expect.closeTo(2.5)],
    ]);
  });

  it('names a run at the end, and counts it up to its last call: what would have followed is not known', () => {
    const cost = costOf(`${reps(5, 4_000)} 14000-depth 17000-depth 18000.`);
    expect(cost.runs).toMatchObject([{ attempts: [6, 7], where: 'end', flags: [] }]);
    expect(cost.total?.estimate).toBeCloseTo(5);
    expect(costOf(`${reps(5, 4_000)} 14000-depth`).runs[0]?.flags).toEqual(['set-running']);
  });

  it('has nothing to measure against without a counted rep', () => {
    const cost = costOf('4000-depth 7000-depth 9000x', { history: [[2, 2]] });
    expect(cost.total).toBeNull();
    expect(cost.runs).toMatchObject([{ where: 'start', cost: null, flags: ['no-counted-rep'] }]);
  });

  it('keeps a long pause that nobody marked, and flags it', () => {
    const cost = costOf(`${reps(4, 4_000)} 12000-depth 22000+ ${reps(3, 24_000)}`);
    expect(cost.total?.estimate).toBeCloseTo(10);
    expect(cost.runs[0]).toMatchObject({ flags: ['long-pause'], unmarkedPause: 8, repeat: 2, disruption: 8 });
  });

  it('divides a run by what followed from each no-rep, and a no-rep with two faults between them', () => {
    const cost = costOf(`${reps(4, 4_000)} 12000-depth 14500-line,aim 18000+ ${reps(3, 20_000)} 24000-`);
    // Run of 8 - 2 = 6 s over 2.5 s and 3.5 s; the last, unexplained one costs its own 0 s.
    const by = Object.fromEntries(cost.faults.map((fault) => [fault.fault, fault.seconds?.estimate]));
    expect(by).toEqual({ depth: expect.closeTo(2.5), line: expect.closeTo(1.75), aim: expect.closeTo(1.75), null: 0 });
    expect(cost.faults.reduce((sum, fault) => sum + fault.share, 0)).toBeCloseTo(1);
    expect(cost.faults.reduce((sum, fault) => sum + fault.noReps, 0)).toBeCloseTo(3);
  });

  it('goes by the verdicts that stand: reversed, slipped and cautioned', () => {
    expect(costOf(`${plain} 30000r6+`).runs).toEqual([]);
    expect(costOf(plain.replace('12000-depth', '12000+ 12100r6-line')).faults).toMatchObject([{ fault: 'line' }]);
    expect(costOf(plain.replace('12000-depth', '12000!depth')).runs).toEqual([]);
    // Withdrawn, the no-rep is as if it had not been, and 10 s to 15.5 s is one clean cycle of 5.5 s.
    const slipped = costOf(plain.replace('12000-depth', '12000-depth 12300s6'));
    expect(slipped).toMatchObject({ runs: [], cleanCycles: 7 });
  });

  it('adds the metres taken back at the set’s own metres a jump, and the seconds added', () => {
    const consequence = { kind: 'metres-back', metres: 3 } as const;
    // Seven and a half of eight jumps reached 9 m and made up 3 m more: 1.6 m a jump, so 1.875 jumps of 2 s for the no-rep.
    const words = `${plain.replace('21500.', '')} 21600m9 21700.`;
    const back = costOf(words, { consequence });
    expect(back.total?.estimate).toBeCloseTo(3.5 + 3.75);
    expect(back).toMatchObject({ repeat: 2, disruption: 1.5, repeatedMetres: 3.75 });
    expect(costOf(plain, { consequence }).runs[0]?.flags).toEqual(['metres-unknown']);
    const added = costOf(plain, { consequence: { kind: 'seconds-added', seconds: 5 } });
    expect(added.total?.estimate).toBeCloseTo(8.5);
    expect(added.addedSeconds).toBe(5);
  });

  it('tells the reps lost in a set against the clock', () => {
    const goal = { kind: 'clock', milliseconds: 21_500 } as const;
    expect(costOf(plain, { goal }).repsLost?.estimate).toBeCloseTo(1.75);
    expect(costOf(plain).repsLost).toBeNull();
  });

  it('is the same each time, and wider at a higher level', () => {
    const uneven = `${reps(5, 4_000)} ${reps(5, 14_300, 2_300)} 25000-depth 29000+ ${reps(6, 31_100, 2_150)}`;
    const [one, two, wide] = [costOf(uneven), costOf(uneven), costOf(uneven, { level: 0.99 })];
    expect(one).toEqual(two);
    const width = (cost: typeof one) => (cost.total?.upper ?? 0) - (cost.total?.lower ?? 0);
    expect(width(one)).toBeGreaterThan(0);
    expect(width(wide)).toBeGreaterThan(width(one));
  });
});

describe('attempt table', () => {
  it('has a flat row for each attempt that stands', () => {
    const words = '4000+ 6000+ 8000-depth 11000+ 11500( 14000) 16000+ 16500( 20000+ 22000+ 22300-aim 22400s12 24000+';
    const rows = attemptTable(foldSet(SET, logOf(words)), { goal: { kind: 'reps', reps: 10 } });
    expect(rows.map((row) => [row.number, row.counted, row.cycle, row.cleanCycle, row.progress])).toEqual([
      [1, 1, 4, null, 0],
      [2, 2, 2, 2, 0.1],
      [3, 2, 2, null, 0.2],
      [4, 3, 3, null, 0.2],
      [5, 4, 2, null, 0.3],
      [6, 5, null, null, 0.4],
      [7, 6, 2, 2, 0.5],
      [8, 7, 2, 2, 0.6],
    ]);
  });
});
