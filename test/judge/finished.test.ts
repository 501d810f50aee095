import { describe, expect, test } from 'vitest';
import { answerOf } from '../../renderer/areas/judge/summary/answer.ts';
import { appealDrafts } from '../../renderer/areas/judge/summary/appeal-drafts.ts';
import { correctionDrafts, standingOf } from '../../renderer/areas/judge/summary/correction.ts';
import { historyLines } from '../../renderer/areas/judge/summary/history.ts';
import { type SetEvent, setEvent } from '../../shared-types/log/events.ts';
import { tally } from '../../shared-types/log/fold.ts';
import type { Attempt } from '../../shared-types/log/state.ts';
import { Judged } from './logs.ts';

const HEAD_JUDGE = '00000000-0000-4000-8000-00000000000d';

/** Three counted reps, a no-rep, a slip; finished before its goal. */
function finished(): Judged {
  const set = Judged.throws(10);
  set.press({ kind: 'count' }, 2_000);
  set.press({ kind: 'no-rep', faults: ['depth'] }, 4_000);
  set.press({ kind: 'count' }, 6_000);
  set.press({ kind: 'count' }, 6_400);
  set.press({ kind: 'slip' }, 6_800);
  set.press({ kind: 'count' }, 9_000);
  set.press({ kind: 'finish' }, 10_000);
  return set;
}

function attemptOf(set: Judged, index: number): Attempt {
  const attempt = set.state.attempts[index];
  if (attempt === undefined) throw new Error(`no attempt ${index}`);
  return attempt;
}

describe('putting a call right', () => {
  const plain = { faults: [], by: null, reason: '' };

  function correct(
    set: Judged,
    index: number,
    change: Partial<Parameters<typeof correctionDrafts>[1]>,
  ): readonly SetEvent[] {
    const attempt = attemptOf(set, index);
    const correction = { standing: standingOf(attempt), ...plain, faults: attempt.faults, ...change };
    return correctionDrafts(attempt, correction, set.log, 60_000).map((draft) => set.add(draft));
  }

  test('what stands so already needs no event', () => {
    expect(correct(finished(), 1, {})).toEqual([]);
  });

  test('other faults of the same verdict are an explanation; with a word of who decided, a reversal', () => {
    const set = finished();
    expect(correct(set, 1, { faults: ['line'] }).map((event) => event.kind)).toEqual(['explain']);
    expect(correct(set, 1, { faults: ['aim'], by: HEAD_JUDGE }).map((event) => event.kind)).toEqual(['reverse']);
    expect(attemptOf(set, 1)).toMatchObject({ verdict: 'no-rep', faults: ['aim'], first: { faults: ['depth'] } });
  });

  test('another verdict is a reversal; a counted rep keeps no fault', () => {
    const set = finished();
    correct(set, 1, { standing: 'counted', reason: 'seen from the side' });
    expect(attemptOf(set, 1)).toMatchObject({ verdict: 'counted', faults: [] });
    expect(set.log.at(-1)).toMatchObject({ kind: 'reverse', reason: 'seen from the side', by: null, at: 60_000 });
    expect(tally(set.state)).toMatchObject({ counted: 4, noReps: 0 });
  });

  test('a call can be withdrawn, brought back, and brought back as something else', () => {
    const set = finished();
    correct(set, 0, { standing: 'withdrawn' });
    expect(tally(set.state)).toMatchObject({ counted: 2 });
    expect(correct(set, 0, { standing: 'withdrawn' })).toEqual([]);
    correct(set, 0, { standing: 'no-rep', faults: ['stand'] });
    expect(attemptOf(set, 0)).toMatchObject({ withdrawn: false, verdict: 'no-rep', faults: ['stand'] });
    correct(set, 2 + 1, { standing: 'counted', faults: [] });
    expect(attemptOf(set, 3).withdrawn).toBe(false);
    expect(set.state.clashes).toEqual([]);
    for (const event of set.log) expect(setEvent.safeParse(event).success).toBe(true);
  });
});

describe('appeals', () => {
  const answer = { verdict: 'counted', faults: ['depth'], by: HEAD_JUDGE, reason: 'deep enough' } as const;

  test('one that is upheld reverses the call and is told; one that is refused changes nothing', () => {
    const set = finished();
    const { ref } = attemptOf(set, 1);
    set.add({ kind: 'appeal', at: 20_000, of: ref, reason: 'I was low', by: null, outcome: 'open' });
    for (const draft of appealDrafts(ref, { ...answer, outcome: 'refused' }, 30_000)) set.add(draft);
    expect(set.state.appeals).toHaveLength(1);
    expect(set.state.appeals[0]).toMatchObject({ outcome: 'refused', event: { reason: 'I was low' } });
    expect(attemptOf(set, 1).verdict).toBe('no-rep');
    for (const draft of appealDrafts(ref, { ...answer, outcome: 'upheld' }, 40_000)) set.add(draft);
    expect(set.state.appeals[0]?.outcome).toBe('upheld');
    expect(attemptOf(set, 1)).toMatchObject({ verdict: 'counted', faults: [] });
    expect(set.state).toMatchObject({ reversals: 1, clashes: [] });
  });
});

describe('the history of a set', () => {
  test('every event is told once, in order, with what it speaks of and whether it stands', () => {
    const set = finished();
    const lines = historyLines(set.log, set.state);
    expect(lines.map((line) => [line.event.kind, line.attempt, line.withdrawn])).toEqual([
      ['go', null, false],
      ['call', 1, false],
      ['call', 2, false],
      ['call', 3, false],
      ['call', null, true],
      ['slip', null, false],
      ['call', 4, false],
      ['finish', null, false],
    ]);
    expect(lines[5]?.target).toBe(set.log[4]);
  });

  test('a slip that was taken back speaks of what it had withdrawn; a line without effect says why', () => {
    const set = Judged.throws(3);
    set.press({ kind: 'count' }, 2_000);
    set.press({ kind: 'slip' }, 3_000);
    set.press({ kind: 'put-back' }, 4_000);
    set.add({ kind: 'break-end', at: 5_000 });
    const lines = historyLines(set.log, set.state);
    expect(lines[3]).toMatchObject({ restores: true, target: set.log[1], attempt: 1 });
    expect(lines[2]?.withdrawn).toBe(true);
    expect(lines[4]?.clash).toContain('no break is running');
  });
});

describe('the one sentence', () => {
  const counts = { attempts: 10, counted: 8, cautions: 0, noReps: 2, unexplained: 0, metres: 0 };
  const train = {
    code: 'depth',
    name: 'Not deep enough',
    remedy: 'Squat to a box.',
    cue: 'Lower!',
    noReps: 2,
    seconds: 5,
    share: 1,
    sure: null,
  };

  test('says what the set can tell and no more', () => {
    expect(answerOf({ counts: { ...counts, attempts: 0, noReps: 0 }, train: null }).kind).toBe('no-attempt');
    expect(answerOf({ counts: { ...counts, noReps: 0 }, train: null }).kind).toBe('clean');
    expect(answerOf({ counts, train: null }).kind).toBe('explain-first');
    expect(answerOf({ counts, train })).toEqual({ kind: 'train', train, few: true });
    expect(answerOf({ counts: { ...counts, noReps: 3 }, train })).toMatchObject({ few: false });
  });
});
