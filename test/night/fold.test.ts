import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { NightEntry, NightEvent } from '../../shared-types/night/events.ts';
import { begunHeats, foldNight, planOf } from '../../shared-types/night/fold.ts';
import type { NightPlan } from '../../shared-types/night/night.ts';
import { freshRoster } from '../../shared-types/night/roster.ts';
import { checkPlan } from '../../shared-types/night/rules.ts';
import { arrangementOf, laneOf, nameOf, people, personId, startAt, stationOf } from './rosters.ts';

const night = '00000000-0000-4000-8000-000000007777';
const set = '00000000-0000-4000-8000-00000000abcd';
const lane = (athlete: number, judge: number, changes = {}) => ({
  lane: '1',
  station: 'throws',
  athlete: personId(athlete),
  judge: personId(judge),
  shadow: null,
  ...changes,
});

function logOf(
  entries: readonly (NightEntry | { kind: 'set'; heat: number; lane: string; role: 'main'; set: string })[],
) {
  return entries.map(
    (entry, index): NightEvent => ({ night, pad: 'desk', seq: index + 1, at: startAt + index, ...entry }),
  );
}

const arrangement = arrangementOf({ people: people(3, 2) });
const heats: NightPlan = [[lane(1, 4)], [lane(2, 5)], [lane(3, 4)]];
const opened = [
  { kind: 'arrange', arrangement },
  { kind: 'plan', why: 'made', heats },
  { kind: 'open' },
  { kind: 'heat-open', heat: 1 },
] as const satisfies NightEntry[];

describe('the log of a night', () => {
  test('tells its heats, pads and sets', () => {
    const state = foldNight(
      night,
      logOf([
        ...opened,
        { kind: 'pad', device: 'phone', name: 'red', role: 'judge', lane: '1' },
        { kind: 'set', heat: 1, lane: '1', role: 'main', set },
        { kind: 'heat-go', heat: 1 },
        { kind: 'heat-close', heat: 1 },
        { kind: 'revoke', device: 'phone' },
        { kind: 'appeal', set, of: { pad: 'phone', seq: 3 }, note: '' },
      ]),
    );
    expect(state.clashes).toEqual([]);
    expect(state.heats.map(({ phase }) => phase)).toEqual(['closed', 'planned', 'planned']);
    expect(state.heats[0]?.lanes[0]?.set).toBe(set);
    expect(state.pads).toEqual([{ device: 'phone', name: 'red', role: 'judge', lane: '1', revoked: true }]);
    expect(state.appeals).toHaveLength(1);
  });

  test('a heat that has begun stays as it is', () => {
    const other = [[lane(2, 4)], [lane(1, 5)]];
    const state = foldNight(night, logOf([...opened, { kind: 'plan', why: 'again', heats: other }]));
    expect(state.clashes.map(({ kind }) => kind)).toEqual(['begun-changed']);
    expect(planOf(state)).toEqual(heats);
    const later = foldNight(
      night,
      logOf([...opened, { kind: 'plan', why: 'again', heats: [[lane(1, 4)], [lane(3, 5)]] }]),
    );
    expect(later.clashes).toEqual([]);
    expect(planOf(later)).toEqual([[lane(1, 4)], [lane(3, 5)]]);
    const without = arrangementOf({ people: people(3, 2).slice(1) });
    expect(foldNight(night, logOf([...opened, { kind: 'arrange', arrangement: without }])).clashes).toHaveLength(1);
  });

  test.each([
    ['a heat out of order', { kind: 'heat-open', heat: 3 }, 'out-of-order'],
    ['go for a heat that is not open', { kind: 'heat-go', heat: 2 }, 'out-of-order'],
    ['a heat that is not there', { kind: 'heat-open', heat: 9 }, 'no-such-heat'],
    ['a second opening', { kind: 'open' }, 'already-open'],
    ['somebody unknown', { kind: 'presence', person: personId(99), state: 'left' }, 'no-such-person'],
    ['an unknown lane', { kind: 'pad', device: 'p', name: '', role: 'judge', lane: '9' }, 'no-such-lane'],
    ['an unknown device', { kind: 'revoke', device: 'p' }, 'no-such-device'],
    ['an appeal elsewhere', { kind: 'appeal', set, of: { pad: 'p', seq: 1 }, note: '' }, 'no-such-set'],
  ] as const)('%s is a clash, and the rest stands', (_what, entry, kind) => {
    const before = foldNight(night, logOf(opened));
    const state = foldNight(night, logOf([...opened, entry]));
    expect(state.clashes.map((clash) => clash.kind)).toEqual([kind]);
    expect({ ...state, clashes: [] }).toEqual(before);
  });

  test('every list of its events folds, and an event that comes twice counts once', () => {
    const log = logOf([...opened, { kind: 'heat-go', heat: 1 }, { kind: 'heat-close', heat: 1 }, { kind: 'close' }]);
    fc.assert(
      fc.property(fc.shuffledSubarray(log), (some) => {
        const state = foldNight(night, some);
        expect(
          foldNight(
            night,
            some.flatMap((event) => [event, event]),
          ),
        ).toEqual(state);
        expect(begunHeats(state)).toBeLessThanOrEqual(state.heats.length);
      }),
    );
  });
});

describe('the hard rules', () => {
  const two = arrangementOf({
    people: people(2, 2, 1),
    stations: [stationOf('throws'), stationOf('jumps')],
    lanes: [laneOf('1', ['throws']), laneOf('2')],
  });
  const third = { ...lane(3, 4), lane: '2' };
  test.each([
    ['two-places', [[lane(1, 3), third]]],
    ['two-places', [[lane(3, 3)]]],
    ['lane-twice', [[lane(1, 4), lane(2, 5)]]],
    ['lane-not-for-station', [[lane(1, 4, { station: 'jumps' })]]],
    ['not-an-athlete', [[lane(4, 5)]]],
    ['not-a-judge', [[lane(1, 2)]]],
    ['no-rest', [[lane(1, 4)], [lane(1, 5, { station: 'jumps', lane: '2' })]]],
    ['judging-right-before', [[lane(1, 3)], [lane(3, 4)]]],
    ['shadow-unwanted', [[lane(1, 4, { shadow: personId(5) })]]],
    ['station-missing', [[lane(1, 4)]]],
    ['station-twice', [[lane(1, 4)], [], [lane(1, 4)]]],
    ['unknown-name', [[lane(99, 4)]]],
    ['loads-differ', [[lane(1, 4)], [], [lane(2, 4)]]],
  ] as const)('%s is found', (rule, plan) => {
    const found = checkPlan(
      freshRoster(two),
      plan.map((heat) => [...heat]),
      nameOf,
    );
    expect(found.map((breach) => breach.rule)).toContain(rule);
  });

  test('judging while nobody may, presence and length are found', () => {
    const strict = arrangementOf({
      people: people(2, 2).map((person, index) => ({ ...person, from: index === 3 ? startAt + 600_000 : null })),
      mustNotJudge: [{ judge: personId(3), athlete: personId(2) }],
      mostHeats: 1,
      shadows: true,
    });
    const plan = [[lane(1, 4)], [lane(2, 3)]];
    const rules = checkPlan(freshRoster(strict), plan, nameOf).map(({ rule }) => rule);
    for (const rule of ['not-here', 'must-not-judge', 'too-many-heats', 'shadow-missing'] as const) {
      expect(rules).toContain(rule);
    }
  });

  test('judges in two groups that never stand together are found, and a fair plan has no breach', () => {
    const given = arrangementOf({ people: people(4, 4), shadows: true });
    const place = (number: string, athlete: number, judge: number, shadow: number) =>
      lane(athlete, judge, { lane: number, shadow: personId(shadow) });
    const apart = [
      [place('1', 1, 5, 6), place('2', 2, 7, 8)],
      [place('1', 3, 6, 5), place('2', 4, 8, 7)],
    ];
    const rules = checkPlan(freshRoster(given), apart, nameOf).map(({ rule }) => rule);
    expect(rules).toEqual(['judges-not-compared', 'pair-repeated', 'pair-repeated']);
    const mixed = [apart[0] ?? [], [place('1', 3, 5, 7), place('2', 4, 6, 8)]];
    expect(checkPlan(freshRoster(given), mixed, nameOf)).toEqual([]);
  });
});
