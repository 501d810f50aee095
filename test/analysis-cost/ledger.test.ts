import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setSums } from '../../main/analysis/cost/set-sums.ts';
import { timeLedger } from '../../main/analysis/cost/time-ledger.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import type { Consequence } from '../../shared-types/sheets/sheet.ts';
import { anyLog, SET } from '../log/arbitrary.ts';
import { logOf } from './logs.ts';

const consequence: fc.Arbitrary<Consequence> = fc.constantFrom(
  { kind: 'repeat' },
  { kind: 'metres-back', metres: 2 },
  { kind: 'seconds-added', seconds: 5 },
);

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

describe('time ledger', () => {
  it('adds up to the clock exactly, with no line below zero, on any log', () => {
    fc.assert(
      fc.property(anyLog, consequence, fc.integer({ min: 0, max: 40_000 }), (log, rule, now) => {
        const state = foldSet(SET, log);
        const history = now % 2 === 0 ? [[2.5, 2.6]] : [];
        const ledger = timeLedger(state, { consequence: rule, now, history });
        const lines = [ledger.start, ledger.work, ledger.noRep, ledger.break];
        expect(lines.reduce((sum, line) => sum + line, 0)).toBe(ledger.clock);
        for (const line of lines) expect(Number.isInteger(line) && line >= 0, String(lines)).toBe(true);
        if (state.endedAt !== null) expect(ledger.clock).toBe(state.endedAt);
        else if (state.phase === 'running') expect(ledger.clock).toBe(Math.max(now, state.lastAt));
      }),
      { numRuns: 2_000 },
    );
  });

  it('is finite and fit for JSON in every part of the sums, on any log', () => {
    fc.assert(
      fc.property(anyLog, consequence, (log, rule) => {
        const sums = setSums(foldSet(SET, log), { consequence: rule, history: [[2.5, 2.6, 9]], resamples: 20 });
        for (const value of numbersIn(sums)) expect(Number.isFinite(value)).toBe(true);
        expect(JSON.parse(JSON.stringify(sums))).toEqual(sums);
        if (sums.cost.total !== null) {
          const runs = sums.cost.runs.reduce((sum, run) => sum + (run.cost?.estimate ?? 0), 0);
          const faults = sums.cost.faults.reduce((sum, fault) => sum + (fault.seconds?.estimate ?? 0), 0);
          const rows = sums.attempts.reduce((sum, row) => sum + (row.cost ?? 0), 0);
          for (const other of [runs, faults, rows]) expect(other).toBeCloseTo(sums.cost.total.estimate, 9);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('gives every millisecond of a hand-made set its line', () => {
    // Go, first rep at 4.0 s, reps each 2.0 s, one no-rep at 10 s whose rep counts at 13 s (1 s late), a break of 5 s.
    const ledger = timeLedger(
      foldSet(SET, logOf('4000+ 6000+ 8000+ 10000-depth 13000+ 13500( 18500) 20000+ 22000+ 24000+ 24000.')),
    );
    expect(ledger).toEqual({
      clock: 24_000,
      start: 4_000,
      work: 12_000,
      noRep: 3_000,
      break: 5_000,
      noRepBy: 'expected-cycle',
      running: false,
    });
  });

  it('gives one expected cycle of a break that a call closed back to work', () => {
    const ledger = timeLedger(foldSet(SET, logOf('4000+ 6000+ 8000+ 10000+ 10500( 18500+ 20500+ 20500.')));
    expect(ledger).toMatchObject({ start: 4_000, work: 10_500, noRep: 0, break: 6_000 });
  });

  it('keeps the tail of an abandoned set in work and a break that the end closed in break', () => {
    expect(timeLedger(foldSet(SET, logOf('4000+ 6000+ 9000x')))).toMatchObject({ start: 4_000, work: 5_000, break: 0 });
    expect(timeLedger(foldSet(SET, logOf('4000+ 6000+ 7000( 9000x')))).toMatchObject({ work: 3_000, break: 2_000 });
  });

  it('is all start while nobody has tried, and counts a running break up to now', () => {
    expect(timeLedger(foldSet(SET, logOf('')), { now: 3_000 })).toMatchObject({
      clock: 3_000,
      start: 3_000,
      running: true,
    });
    expect(timeLedger(foldSet(SET, logOf('1000(')), { now: 3_000 })).toMatchObject({ start: 1_000, break: 2_000 });
    expect(timeLedger(foldSet(SET, []))).toMatchObject({ clock: 0, start: 0, work: 0, noRep: 0, break: 0 });
  });

  it('falls back on the calls where no cycle can be expected', () => {
    expect(timeLedger(foldSet(SET, logOf('4000-depth 7000-line 10000+ 12000-depth 15000+ 15000.')))).toMatchObject({
      start: 4_000,
      noRep: 3_000 + 2_000,
      work: 6_000,
      noRepBy: 'calls',
    });
  });
});
