import { describe, expect, it } from 'vitest';
import { type ObservedNoRep, type WhatToTrain, whatToTrain } from '../../main/analysis/forecast/what-to-train.ts';

const many = (count: number, fault: string, cost: number | null): ObservedNoRep[] =>
  Array.from({ length: count }, (_, i) => ({ faults: [fault], cost: cost === null ? null : cost + 0.1 * (i % 2) }));

function chosen(noReps: readonly ObservedNoRep[], attempts = 200, options = {}): WhatToTrain {
  const answer = whatToTrain(noReps, attempts, options);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.value;
}

describe('what to train first', () => {
  it('goes by seconds and not by number', () => {
    const answer = chosen([...many(10, 'aim', 2), ...many(9, 'depth', 6)]);
    expect(answer).toMatchObject({ by: 'seconds', how: 'clear', first: { fault: 'depth', noReps: 9 } });
    expect(answer.first.seconds).toBeCloseTo(9 * 6 + 0.4);
    expect(answer.first.per100.estimate).toBeCloseTo((9 * 6 + 0.4) / 2);
    expect(answer.ranking.map((fault) => fault.fault)).toEqual(['depth', 'aim']);
    expect(answer.ranking.reduce((sum, fault) => sum + fault.share, 0)).toBeCloseTo(1);
    expect(answer.ranking.reduce((sum, fault) => sum + fault.sure, 0)).toBeCloseTo(1);
  });

  it('is open between equals, and surer with more of the same', () => {
    expect(chosen([...many(4, 'aim', 3), ...many(4, 'line', 3)])).toMatchObject({ how: 'open' });
    const few = chosen([...many(2, 'aim', 3), ...many(4, 'line', 3)]);
    const more = chosen([...many(20, 'aim', 3), ...many(40, 'line', 3)]);
    expect(more.first.sure).toBeGreaterThan(few.first.sure);
    expect(more.how).toBe('clear');
  });

  it('is not sure after one single no-rep, as the sheet has other faults', () => {
    const one = chosen(many(1, 'depth', 4), 50, { candidates: ['depth', 'line', 'aim', 'stand', 'bounce'] });
    expect(one.first.fault).toBe('depth');
    expect(one.how).not.toBe('clear');
    expect(one.ranking).toHaveLength(1);
  });

  it('does not let one dear no-rep decide alone', () => {
    const answer = chosen([...many(1, 'bounce', 20), ...many(6, 'depth', 3)]);
    expect(answer.first.fault).toBe('bounce');
    expect(answer.how).toBe('open');
  });

  it('counts where a cost is not estimable, halves a no-rep with two faults, and leaves unexplained ones out', () => {
    const answer = chosen([
      ...many(3, 'line', null),
      ...many(1, 'depth', 9),
      { faults: ['aim', 'line'], cost: null },
      { faults: [], cost: 30 },
    ]);
    expect(answer).toMatchObject({ by: 'count', unexplained: 1, first: { fault: 'line', noReps: 3.5, seconds: null } });
    expect(answer.first.share).toBeCloseTo(3.5 / 5);
  });

  it('is a typed error without a reason to go by', () => {
    const kind = (noReps: readonly ObservedNoRep[], attempts: number) => {
      const answer = whatToTrain(noReps, attempts);
      return answer.ok ? 'ok' : answer.error.kind;
    };
    expect(kind([], 10)).toBe('no-data');
    expect(kind([{ faults: [], cost: 3 }], 10)).toBe('no-data');
    expect(kind(many(3, 'aim', 2), 2)).toBe('invalid-input');
    expect(kind([{ faults: ['aim'], cost: Number.NaN }], 10)).toBe('invalid-input');
  });
});
