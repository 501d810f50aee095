import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { refKey, type SetEvent, setEvent } from '../../shared-types/log/events.ts';
import { counts, foldSet, goalReached, tally } from '../../shared-types/log/fold.ts';
import { orderEvents } from '../../shared-types/log/order.ts';
import { anyLog, cleanLog, SET } from './arbitrary.ts';

type Body = SetEvent extends infer E ? (E extends SetEvent ? Omit<E, 'set' | 'pad' | 'seq'> : never) : never;

/** A log of one pad, numbered from 1; `at` and the rest as given. */
function log(...bodies: Body[]): SetEvent[] {
  return bodies.map((body, index) => ({ set: SET, pad: 'a', seq: index + 1, ...body }));
}
const of = (seq: number, pad = 'a') => ({ pad, seq });
const go = { kind: 'go', at: 0, wallClock: 1_700_000_000_000 } as const;
const counted = (at: number): Body => ({ kind: 'call', at, verdict: 'counted', faults: [] });
const noRep = (at: number, ...faults: string[]): Body => ({ kind: 'call', at, verdict: 'no-rep', faults });
const clashKinds = (events: SetEvent[]) => foldSet(SET, events).clashes.map((clash) => clash.kind);

describe('any log', () => {
  test('[5] folds without throwing, and every generated event is well-formed', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        for (const event of events) expect(setEvent.safeParse(event).success).toBe(true);
        foldSet(SET, events);
      }),
      { numRuns: 2_000 },
    );
  });

  test('[1] is read the same with any of its events repeated', () => {
    fc.assert(
      fc.property(anyLog, fc.array(fc.nat(), { maxLength: 20 }), (events, picks) => {
        const repeated = [...events, ...picks.flatMap((pick) => events[pick % Math.max(1, events.length)] ?? [])];
        const { clashes, ...state } = foldSet(SET, events);
        const { clashes: repeatedClashes, ...repeatedState } = foldSet(SET, repeated);
        expect(repeatedState).toEqual(state);
        expect(new Set(repeatedClashes.map((item) => item.message))).toEqual(
          new Set(clashes.map((item) => item.message)),
        );
      }),
      { numRuns: 1_000 },
    );
  });

  test('[2] is read the same in any order of arrival', () => {
    fc.assert(
      fc.property(
        cleanLog.chain((events) =>
          fc.tuple(fc.constant(events), fc.shuffledSubarray(events, { minLength: events.length })),
        ),
        ([events, shuffled]) => {
          expect(foldSet(SET, shuffled)).toEqual(foldSet(SET, events));
        },
      ),
      { numRuns: 2_000 },
    );
  });

  test('[3][4] is ordered by pad number within a pad and after targets, circles of references aside', () => {
    fc.assert(
      fc.property(cleanLog, (events) => {
        const forward = events.filter(
          (event) => !('of' in event) || !events.some((other) => refKey(other) === refKey(event.of) && 'of' in other),
        );
        const { events: ordered } = orderEvents(forward);
        const place = new Map(ordered.map((event, index) => [refKey(event), index]));
        for (const event of forward) {
          for (const other of forward) {
            if (event.pad === other.pad && event.seq < other.seq && !circular(forward)) {
              expect(place.get(refKey(event))).toBeLessThan(place.get(refKey(other)) ?? -1);
            }
          }
          if ('of' in event && place.has(refKey(event.of)) && !circular(forward)) {
            expect(place.get(refKey(event.of))).toBeLessThan(place.get(refKey(event)) ?? -1);
          }
        }
      }),
      { numRuns: 2_000 },
    );
  });

  test('[5] is prefix-consistent: reading on adds attempts at the end and never forgets a first call', () => {
    fc.assert(
      fc.property(cleanLog, fc.nat(40), (events, length) => {
        const { events: ordered } = orderEvents(events);
        // Later slips may withdraw an end or a start of the prefix; what was called stays as it was called.
        const before = foldSet(SET, ordered.slice(0, length)).attempts;
        const after = new Map(foldSet(SET, ordered).attempts.map((attempt) => [refKey(attempt.ref), attempt]));
        for (const attempt of before) {
          expect(after.get(refKey(attempt.ref))?.first).toEqual(attempt.first);
          expect(after.get(refKey(attempt.ref))?.at).toBe(attempt.at);
          const kept = after.get(refKey(attempt.ref))?.changes.map((change) => refKey(change.event)) ?? [];
          for (const change of attempt.changes) expect(kept).toContain(refKey(change.event));
        }
        const order = [...after.keys()];
        const places = before.map((attempt) => order.indexOf(refKey(attempt.ref)));
        expect(places).toEqual([...places].sort((one, other) => one - other));
      }),
      { numRuns: 2_000 },
    );
  });

  test('[12] counts are whole, not negative and add up', () => {
    fc.assert(
      fc.property(anyLog, (events) => {
        const state = foldSet(SET, events);
        const sums = tally(state);
        for (const value of [...Object.values(sums), state.slips, state.reversals])
          expect(value).toBeGreaterThanOrEqual(0);
        expect(sums.counted + sums.noReps).toBe(sums.attempts);
        expect(sums.cautions).toBeLessThanOrEqual(sums.counted);
        expect(sums.unexplained).toBeLessThanOrEqual(sums.noReps);
        expect(state.attempts.filter(counts)).toHaveLength(sums.counted);
        for (const pause of state.breaks) expect(pause.end ?? pause.start).toBeGreaterThanOrEqual(pause.start);
      }),
      { numRuns: 2_000 },
    );
  });

  test('[8] a withdrawn or reversed call can be told from the state as it was first made', () => {
    fc.assert(
      fc.property(cleanLog, (events) => {
        const state = foldSet(SET, events);
        for (const attempt of state.attempts) {
          const call = events.find((event) => refKey(event) === refKey(attempt.ref));
          expect(call).toMatchObject({ kind: 'call', verdict: attempt.first.verdict, faults: attempt.first.faults });
        }
      }),
      { numRuns: 1_000 },
    );
  });
});

/** Whether following pad order and references can come back to where it began. */
function circular(events: readonly SetEvent[]): boolean {
  const byKey = new Map(events.map((event) => [refKey(event), event]));
  const before = (event: SetEvent) =>
    events
      .filter((other) => other.pad === event.pad && other.seq < event.seq)
      .concat('of' in event ? (byKey.get(refKey(event.of)) ?? []) : []);
  const clear = new Set<string>();
  const climb = (event: SetEvent, above: Set<string>): boolean => {
    const key = refKey(event);
    if (above.has(key)) return true;
    if (clear.has(key)) return false;
    const found = before(event).some((other) => climb(other, new Set([...above, key])));
    if (!found) clear.add(key);
    return found;
  };
  return events.some((event) => climb(event, new Set()));
}

describe('one rule at a time', () => {
  test('[1] the same name with other contents is a clash and the first stays', () => {
    const [start, first] = log(go, counted(1_000));
    const other = { ...first, verdict: 'no-rep' } as SetEvent;
    const state = foldSet(SET, [start, first, other] as SetEvent[]);
    expect(state.clashes.map((item) => item.kind)).toEqual(['changed-event']);
    expect(tally(state).counted).toBe(1);
  });

  test('[3] a clock that steps back within a pad does not reorder its calls', () => {
    const state = foldSet(SET, log(go, counted(2_000), noRep(1_500, 'depth')));
    expect(state.attempts.map((attempt) => attempt.verdict)).toEqual(['counted', 'no-rep']);
  });

  test('[4] a slip from a pad whose clock runs behind still meets its call', () => {
    const events = log(go, counted(5_003));
    const slip = { set: SET, pad: 'b', seq: 1, at: 5_000, kind: 'slip', of: of(2) } as const;
    const state = foldSet(SET, [slip, ...events]);
    expect(state.clashes).toEqual([]);
    expect(state.attempts[0]?.withdrawn).toBe(true);
  });

  test('[5] an event of another set has no effect', () => {
    expect(clashKinds([{ ...go, set: '00000000-0000-4000-8000-000000000002', pad: 'a', seq: 1 }])).toEqual([
      'wrong-set',
    ]);
  });

  test('[6] nothing counts before go or after the end, and later words do', () => {
    expect(clashKinds(log({ ...go, at: 10 }, { ...counted(5) }))).toEqual([]);
    expect(clashKinds(log(counted(5)))).toEqual(['not-started']);
    expect(clashKinds(log(go, { ...go, at: 9 }))).toEqual(['already-started']);
    const ended = log(go, noRep(900), { kind: 'finish', at: 1_000 }, counted(1_100), {
      kind: 'explain',
      at: 60_000,
      of: of(2),
      faults: ['depth'],
    });
    const state = foldSet(SET, ended);
    expect(state.clashes.map((item) => item.kind)).toEqual(['after-end']);
    expect(state.attempts).toHaveLength(1);
    expect(state.attempts[0]?.faults).toEqual(['depth']);
    expect(state.phase).toBe('finished');
    expect(state.endedAt).toBe(1_000);
  });

  test('[7] a slip withdraws, a slip of the slip restores, and so on', () => {
    const slip = (seq: number, at: number) => ({ kind: 'slip', at, of: of(seq) }) as const;
    const steps = log(go, counted(1_000), slip(2, 1_100), slip(3, 1_200), slip(4, 1_300));
    expect([2, 3, 4, 5].map((length) => tally(foldSet(SET, steps.slice(0, length))).counted)).toEqual([1, 0, 1, 0]);
    expect([2, 3, 4, 5].map((length) => foldSet(SET, steps.slice(0, length)).slips)).toEqual([0, 1, 0, 1]);
    expect(clashKinds(log(go, counted(1), slip(2, 2), slip(2, 3)))).toEqual(['already-withdrawn']);
    expect(clashKinds(log(go, slip(1, 2)))).toEqual(['wrong-target']);
    expect(clashKinds(log(go, slip(9, 2)))).toEqual(['no-such-event']);
  });

  test('[7] a withdrawn finish lets the set run on, and calls made meanwhile count', () => {
    const events = log(go, counted(1_000), { kind: 'finish', at: 1_000 }, counted(2_000), {
      kind: 'slip',
      at: 2_500,
      of: of(3),
    });
    const state = foldSet(SET, events);
    expect(state.phase).toBe('running');
    expect(tally(state).counted).toBe(2);
    expect(state.clashes).toEqual([]);
  });

  test('[8] the last reversal that stands decides; withdrawing it brings the one before back', () => {
    const reverse = (at: number, to: 'no-rep' | 'counted', ...faults: string[]) =>
      ({ kind: 'reverse', at, of: of(2), verdict: to, faults, by: null, reason: '' }) as const;
    const events = log(go, counted(1_000), reverse(1_500, 'no-rep', 'depth'), reverse(1_800, 'counted'), {
      kind: 'slip',
      at: 2_000,
      of: of(4),
    });
    const attempt = foldSet(SET, events).attempts[0];
    expect(attempt?.verdict).toBe('no-rep');
    expect(attempt?.faults).toEqual(['depth']);
    expect(attempt?.first).toEqual({ verdict: 'counted', faults: [] });
    expect(attempt?.changes.map((change) => change.withdrawn)).toEqual([false, true]);
    expect(foldSet(SET, events).reversals).toBe(1);
  });

  test('[9] a counted rep has no fault to explain, and the schema refuses one', () => {
    expect(clashKinds(log(go, counted(1), { kind: 'explain', at: 2, of: of(2), faults: ['depth'] }))).toEqual([
      'wrong-target',
    ]);
    const wrong = { set: SET, pad: 'a', seq: 1, ...counted(1), faults: ['depth'] };
    expect(setEvent.safeParse(wrong).error?.issues[0]?.message).toContain('a counted rep has no fault');
  });

  test('[10] the judge, the next call or the end closes a break', () => {
    const stop = (at: number) => ({ kind: 'break-start', at }) as const;
    const events = log(go, stop(100), { kind: 'break-end', at: 300 }, stop(400), counted(900), stop(1_000), {
      kind: 'finish',
      at: 1_200,
    });
    expect(foldSet(SET, events).breaks.map(({ start, end, closedBy }) => [start, end, closedBy])).toEqual([
      [100, 300, 'judge'],
      [400, 900, 'call'],
      [1_000, 1_200, 'end'],
    ]);
    expect(clashKinds(log(go, stop(1), stop(2)))).toEqual(['break-open']);
    expect(clashKinds(log(go, { kind: 'break-end', at: 2 }))).toEqual(['no-break-open']);
  });

  test('[10] a break that was closed by a slip of a call runs on', () => {
    const events = log(go, { kind: 'break-start', at: 100 }, counted(900), { kind: 'slip', at: 950, of: of(3) });
    expect(foldSet(SET, events).breaks).toMatchObject([{ start: 100, end: null }]);
  });

  test('[11] marks go forward', () => {
    const mark = (at: number, metres: number) => ({ kind: 'mark', at, metres }) as const;
    expect(clashKinds(log(go, mark(1, 20), mark(2, 10)))).toEqual(['mark-goes-back']);
    const mended = foldSet(SET, log(go, mark(1, 20), { kind: 'slip', at: 2, of: of(2) }, mark(3, 10)));
    expect(mended.clashes).toEqual([]);
    expect(tally(mended).metres).toBe(10);
  });

  test('[6] appeals speak of a call and keep the last answer', () => {
    const appeal = (at: number, outcome: 'open' | 'upheld') =>
      ({ kind: 'appeal', at, of: of(2), reason: 'deep enough', by: null, outcome }) as const;
    const state = foldSet(SET, log(go, noRep(900, 'depth'), appeal(1_000, 'open'), appeal(2_000, 'upheld')));
    expect(state.appeals.map((item) => item.outcome)).toEqual(['upheld']);
  });
});

describe('goals', () => {
  test('are reached by counted reps, by metres or by the clock', () => {
    const state = foldSet(SET, log(go, counted(1), noRep(2), { kind: 'mark', at: 3, metres: 10 }));
    expect(goalReached({ kind: 'reps', reps: 1 }, state, 5)).toBe(true);
    expect(goalReached({ kind: 'reps', reps: 2 }, state, 5)).toBe(false);
    expect(goalReached({ kind: 'metres', metres: 10 }, state, 5)).toBe(true);
    expect(goalReached({ kind: 'clock', milliseconds: 1_000 }, state, 999)).toBe(false);
    expect(goalReached({ kind: 'clock', milliseconds: 1_000 }, state, 1_000)).toBe(true);
    expect(goalReached({ kind: 'open' }, state, 1e9)).toBe(false);
  });
});
