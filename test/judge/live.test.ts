import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Intent } from '../../renderer/areas/judge/live/decide.ts';
import { nextMark } from '../../renderer/areas/judge/live/marks.ts';
import { slipTargets } from '../../renderer/areas/judge/live/undo.ts';
import { withdrawnKeys } from '../../renderer/areas/judge/live/withdrawn.ts';
import { faultZones } from '../../renderer/areas/judge/live/zones.ts';
import { soundOf, sounds } from '../../renderer/areas/judge/sound/sounds.ts';
import { secondsLeft, ticks } from '../../renderer/areas/judge/start/countdown.ts';
import { tally } from '../../shared-types/log/fold.ts';
import { jumpBurpee } from '../../shared-types/sheets/jump-burpee.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';
import { Judged } from './logs.ts';

const intent: fc.Arbitrary<Intent> = fc.oneof(
  { weight: 6, arbitrary: fc.constant({ kind: 'count' as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: 'caution' as const }) },
  {
    weight: 3,
    arbitrary: fc
      .constantFrom<readonly string[]>([], ['depth'], ['line'])
      .map((faults) => ({ kind: 'no-rep' as const, faults })),
  },
  { weight: 2, arbitrary: fc.constantFrom('aim', 'stand').map((fault) => ({ kind: 'explain' as const, fault })) },
  { weight: 1, arbitrary: fc.constant({ kind: 'last-was-no-rep' as const }) },
  { weight: 3, arbitrary: fc.constant({ kind: 'slip' as const }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'put-back' as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: 'break' as const }) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 40 }).map((metres) => ({ kind: 'mark' as const, metres })) },
  { weight: 1, arbitrary: fc.constant({ kind: 'finish' as const }) },
);
const presses = fc.array(fc.tuple(intent, fc.integer({ min: 0, max: 3_000 })), { maxLength: 60 });
const goal = fc.constantFrom(
  { kind: 'reps' as const, reps: 8 },
  { kind: 'clock' as const, milliseconds: 40_000 },
  { kind: 'metres' as const, metres: 30 },
  { kind: 'open' as const },
);

test('whatever is pressed in whatever order, the log holds no clash and the tally stays a count', () => {
  fc.assert(
    fc.property(goal, presses, (aim, list) => {
      const set = new Judged(aim).go();
      let at = 0;
      for (const [press, wait] of list) {
        at += wait;
        const before = set.log.length;
        const decision = set.press(press, at);
        expect(decision.outcome.kind === 'nothing' && !decision.ended).toBe(set.log.length === before);
      }
      expect(set.state.clashes).toEqual([]);
      expect(Math.min(...Object.values(tally(set.state)))).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 400 },
  );
});

test('slips all the way back leave a log without effect, and end', () => {
  fc.assert(
    fc.property(presses, (list) => {
      const set = new Judged({ kind: 'open' }).go();
      list.forEach(([press], index) => {
        set.press(press, index * 1_000);
      });
      for (let step = 0; step <= list.length && slipTargets(set.log, new Set(['desk'])).length > 0; step += 1) {
        set.press({ kind: 'slip' }, 100_000);
      }
      expect(slipTargets(set.log, new Set(['desk']))).toEqual([]);
      expect(tally(set.state)).toMatchObject({ attempts: 0, counted: 0, metres: 0 });
      expect(set.state).toMatchObject({ phase: 'running', breaks: [], clashes: [] });
    }),
    { numRuns: 200 },
  );
});

test('what the fold leaves out as withdrawn is what the slips name', () => {
  const set = Judged.throws(10);
  set.press({ kind: 'count' }, 1_000);
  set.press({ kind: 'slip' }, 2_000);
  set.press({ kind: 'put-back' }, 3_000);
  set.press({ kind: 'slip' }, 4_000);
  expect([...withdrawnKeys(set.log)].toSorted()).toEqual(['desk#2', 'desk#3']);
  expect(set.state.attempts.map((attempt) => attempt.withdrawn)).toEqual([true]);
});

test('fault zones go from high to low, side by side where they are many', () => {
  expect(faultZones(wallThrow.faults).map((zone) => [zone.fault.code, zone.row, zone.column])).toEqual([
    ['line', 0, 0],
    ['aim', 1, 0],
    ['stand', 2, 0],
    ['depth', 3, 0],
    ['bounce', 4, 0],
  ]);
  const many = faultZones(jumpBurpee.faults);
  expect(many.map((zone) => [zone.row, zone.column])).toEqual([
    [0, 0],
    [0, 1],
    [1, 0],
    [1, 1],
    [2, 0],
    [2, 1],
    [3, 0],
  ]);
  const heights = many.map((zone) => zone.bodyHeight);
  expect(heights).toEqual(heights.toSorted((one, other) => other - one));
});

test('the next mark: the next whole span, the goal where it comes first, and on past the goal', () => {
  const metres = { kind: 'metres' as const, metres: 80 };
  expect([0, 9.5, 10, 70].map((reached) => nextMark(jumpBurpee, metres, reached))).toEqual([10, 10, 20, 80]);
  expect(nextMark(jumpBurpee, { kind: 'metres', metres: 75 }, 70)).toBe(75);
  expect(nextMark(jumpBurpee, metres, 80)).toBe(90);
  expect(nextMark({ markEveryM: 0.1 }, { kind: 'open' }, 0.3)).toBe(0.4);
  expect(nextMark(wallThrow, metres, 0)).toBeNull();
});

test('every sound is its own, and the end of a set is heard as such', () => {
  const forms = Object.values(sounds).map((notes) => JSON.stringify(notes));
  expect(new Set(forms).size).toBe(forms.length);
  expect(soundOf({ kind: 'counted', count: 99 }, false)).toBe('counted');
  expect(soundOf({ kind: 'counted', count: 100 }, true)).toBe('finish');
  expect(soundOf({ kind: 'nothing', why: 'time-is-up' }, true)).toBe('finish');
  expect(soundOf({ kind: 'break', running: true }, false)).toBe('break-start');
  expect(soundOf({ kind: 'abandoned' }, true)).toBe('slip');
});

test('the countdown shows whole seconds, never more than it began with, and ends at nought', () => {
  expect([-5, 0, 1, 999, 1_000, 9_001, 9_999, 10_000, 12_000].map((elapsed) => secondsLeft(10, elapsed))).toEqual([
    10, 10, 10, 10, 9, 1, 1, 0, 0,
  ]);
  expect([0, 1, 5, 6, 10, 11].map(ticks)).toEqual([false, true, true, false, true, false]);
});
