import { describe, expect, test } from 'vitest';
import { finishByClock } from '../../renderer/areas/judge/live/decide.ts';
import { setEvent } from '../../shared-types/log/events.ts';
import { tally } from '../../shared-types/log/fold.ts';
import { Judged } from './logs.ts';

describe('calls', () => {
  test('count, caution and no-rep are calls at the time of the press, rounded to whole milliseconds', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'count' }, 2_000.4);
    set.press({ kind: 'caution' }, 4_000.6);
    set.press({ kind: 'no-rep', faults: ['depth'] }, 6_000);
    expect(
      set.log.slice(1).map((event) => ('verdict' in event ? [event.verdict, event.faults, event.at] : null)),
    ).toEqual([
      ['counted', [], 2_000],
      ['caution', [], 4_001],
      ['no-rep', ['depth'], 6_000],
    ]);
    expect(tally(set.state)).toMatchObject({ counted: 2, cautions: 1, noReps: 1 });
    for (const event of set.log) expect(setEvent.safeParse(event).success).toBe(true);
  });

  test('a time stamp before go or without sense gives a time the log can hold', () => {
    const set = Judged.throws(100);
    expect(set.press({ kind: 'count' }, -12).drafts[0]?.at).toBe(0);
    expect(set.press({ kind: 'count' }, Number.NaN).drafts[0]?.at).toBe(0);
  });

  test('before go nothing is written, and the answer says why', () => {
    const set = new Judged({ kind: 'open' });
    expect(set.press({ kind: 'count' }, 10)).toEqual({
      drafts: [],
      outcome: { kind: 'nothing', why: 'not-running' },
      ended: false,
    });
  });
});

describe('the end of a set', () => {
  test('the call that reaches the goal is followed by a finish at the same time', () => {
    const set = Judged.throws(2);
    expect(set.press({ kind: 'count' }, 2_000).ended).toBe(false);
    set.press({ kind: 'no-rep', faults: [] }, 4_000);
    const last = set.press({ kind: 'caution' }, 6_100);
    expect(last.ended).toBe(true);
    expect(set.state).toMatchObject({ phase: 'finished', endedAt: 6_100, clashes: [] });
    expect(set.press({ kind: 'count' }, 8_000).outcome).toEqual({ kind: 'nothing', why: 'not-running' });
  });

  test('the mark that reaches the distance is followed by a finish at the same time', () => {
    const set = Judged.jumps(20);
    set.press({ kind: 'mark', metres: 10 }, 30_000);
    expect(set.press({ kind: 'mark', metres: 5 }, 31_000).outcome).toEqual({ kind: 'nothing', why: 'mark-goes-back' });
    set.press({ kind: 'mark', metres: 20 }, 61_000);
    expect(set.state).toMatchObject({ phase: 'finished', endedAt: 61_000, clashes: [] });
  });

  test('against the clock: a press at or after the time finishes the set at exactly the time and is not counted', () => {
    const set = new Judged({ kind: 'clock', milliseconds: 60_000 }).go();
    set.press({ kind: 'count' }, 59_999);
    expect(finishByClock(59_999.9, set.moment)).toBeNull();
    expect(finishByClock(60_000, set.moment)).toEqual({ kind: 'finish', at: 60_000 });
    const late = set.press({ kind: 'count' }, 60_000);
    expect(late).toMatchObject({ ended: true, outcome: { kind: 'nothing', why: 'time-is-up' } });
    expect(set.state).toMatchObject({ phase: 'finished', endedAt: 60_000, clashes: [] });
    expect(tally(set.state).counted).toBe(1);
    expect(finishByClock(70_000, set.moment)).toBeNull();
  });

  test('an open set ends only on purpose', () => {
    const set = new Judged({ kind: 'open' }).go();
    for (let rep = 1; rep <= 300; rep += 1) set.press({ kind: 'count' }, rep * 2_000);
    expect(set.state.phase).toBe('running');
    set.press({ kind: 'finish' }, 601_000);
    expect(set.state).toMatchObject({ phase: 'finished', endedAt: 601_000 });
  });

  test('abandoning keeps its reason', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'abandon', reason: 'shoulder' }, 9_000);
    expect(set.state.phase).toBe('abandoned');
    expect(set.log.at(-1)).toMatchObject({ kind: 'abandon', reason: 'shoulder' });
  });
});

describe('afterwards', () => {
  test('a no-rep first, its fault afterwards, with other calls between', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'no-rep', faults: [] }, 2_000);
    set.press({ kind: 'count' }, 4_000);
    set.press({ kind: 'explain', fault: 'line' }, 5_000);
    expect(set.state.attempts[0]).toMatchObject({ verdict: 'no-rep', faults: ['line'], at: 2_000 });
    expect(set.press({ kind: 'explain', fault: 'line' }, 6_000).outcome.kind).toBe('nothing');
  });

  test('a fault that the sheet does not know explains nothing', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'no-rep', faults: [] }, 2_000);
    expect(set.press({ kind: 'explain', fault: 'creep' }, 3_000).drafts).toEqual([]);
  });

  test('a caution is explained only while it is the last call', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'caution' }, 2_000);
    set.press({ kind: 'explain', fault: 'depth' }, 2_500);
    expect(set.state.attempts[0]).toMatchObject({ verdict: 'caution', faults: ['depth'] });
    set.press({ kind: 'caution' }, 4_000);
    set.press({ kind: 'count' }, 6_000);
    expect(set.press({ kind: 'explain', fault: 'depth' }, 6_500).outcome.kind).toBe('nothing');
  });

  test('"last one was a no-rep" reverses the last counted call, past no-reps after it, and may be explained', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'no-rep', faults: ['line'] }, 4_000);
    set.press({ kind: 'last-was-no-rep' }, 4_500);
    set.press({ kind: 'explain', fault: 'aim' }, 5_000);
    expect(set.state.attempts[0]).toMatchObject({
      first: { verdict: 'counted', faults: [] },
      verdict: 'no-rep',
      faults: ['aim'],
    });
    expect(tally(set.state)).toMatchObject({ counted: 0, noReps: 2, unexplained: 0 });
    expect(set.press({ kind: 'last-was-no-rep' }, 6_000).outcome).toEqual({ kind: 'nothing', why: 'no-counted-rep' });
  });

  test('"last one was a no-rep" just after the goal lets the set run on', () => {
    const set = Judged.throws(2);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'count' }, 4_000);
    set.press({ kind: 'last-was-no-rep' }, 5_000);
    expect(set.state).toMatchObject({ phase: 'running', clashes: [] });
    expect(set.press({ kind: 'count' }, 7_000).ended).toBe(true);
    expect(set.state).toMatchObject({ phase: 'finished', endedAt: 7_000, clashes: [] });
  });
});

describe('breaks', () => {
  test('one press begins, the next ends; a call ends it too', () => {
    const set = Judged.throws(100);
    expect(set.press({ kind: 'break' }, 1_000).outcome).toEqual({ kind: 'break', running: true });
    expect(set.press({ kind: 'break' }, 4_000).outcome).toEqual({ kind: 'break', running: false });
    set.press({ kind: 'break' }, 6_000);
    set.press({ kind: 'count' }, 9_000);
    expect(set.press({ kind: 'break' }, 12_000).outcome).toEqual({ kind: 'break', running: true });
    expect(set.state.breaks.map((item) => [item.start, item.end, item.closedBy])).toEqual([
      [1_000, 4_000, 'judge'],
      [6_000, 9_000, 'call'],
      [12_000, null, null],
    ]);
    expect(set.state.clashes).toEqual([]);
  });
});

describe('slips', () => {
  test('each further press goes one event further back, and the log keeps everything', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'count' }, 4_000);
    set.press({ kind: 'break' }, 5_000);
    set.press({ kind: 'slip' }, 6_000);
    set.press({ kind: 'slip' }, 6_200);
    expect(tally(set.state).counted).toBe(1);
    expect(set.state.breaks).toEqual([]);
    set.press({ kind: 'slip' }, 6_400);
    expect(set.press({ kind: 'slip' }, 6_600).outcome).toEqual({ kind: 'nothing', why: 'no-slip-left' });
    expect(set.state).toMatchObject({ slips: 3, clashes: [] });
    expect(set.log).toHaveLength(7);
  });

  test('the slip of another pad’s event is not made by this one', () => {
    const set = Judged.throws(100);
    set.add({ kind: 'call', at: 1_000, verdict: 'counted', faults: [] }, 'other');
    expect(set.press({ kind: 'slip' }, 2_000).outcome.kind).toBe('nothing');
  });

  test('"put back" restores what the last slip withdrew, and only while nothing came after it', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'slip' }, 3_000);
    set.press({ kind: 'put-back' }, 3_500);
    expect(tally(set.state).counted).toBe(1);
    expect(set.press({ kind: 'put-back' }, 3_600).outcome.kind).toBe('nothing');
    set.press({ kind: 'slip' }, 4_000);
    set.press({ kind: 'count' }, 5_000);
    expect(set.press({ kind: 'put-back' }, 5_500).outcome.kind).toBe('nothing');
    expect(tally(set.state).counted).toBe(1);
    expect(set.state.clashes).toEqual([]);
  });

  test('a slip just after the goal takes back both the finish and the call that reached it', () => {
    const set = Judged.throws(2);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'count' }, 4_000);
    set.press({ kind: 'slip' }, 5_000);
    expect(set.state).toMatchObject({ phase: 'running', slips: 2, clashes: [] });
    expect(tally(set.state).counted).toBe(1);
  });

  test('a finish on purpose is taken back alone', () => {
    const set = Judged.throws(100);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'finish' }, 4_000);
    set.press({ kind: 'slip' }, 5_000);
    expect(set.state).toMatchObject({ phase: 'running', slips: 1 });
    expect(tally(set.state).counted).toBe(1);
  });

  test('time that was up stays up: the slip withdraws the last call', () => {
    const set = new Judged({ kind: 'clock', milliseconds: 10_000 }).go();
    set.press({ kind: 'count' }, 9_000);
    set.add({ kind: 'finish', at: 10_000 });
    set.press({ kind: 'slip' }, 11_000);
    expect(set.state).toMatchObject({ phase: 'finished', endedAt: 10_000, clashes: [] });
    expect(tally(set.state).counted).toBe(0);
  });
});
