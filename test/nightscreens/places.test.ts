import { expect, test } from 'vitest';
import { exchanged, freeJudges, type Pick, personAt } from '../../renderer/areas/night/plan/places.ts';
import type { NightPlan } from '../../shared-types/night/night.ts';
import { freshRoster } from '../../shared-types/night/roster.ts';
import { checkPlan } from '../../shared-types/night/rules.ts';
import { arrangementOf, nameOf, personId, personOf, stationOf } from '../night/rosters.ts';

const [a, b, c, d, e] = [1, 2, 3, 4, 5].map(personId) as [string, string, string, string, string];
const plan: NightPlan = [
  [{ lane: '1', station: 'throws', athlete: a, judge: c, shadow: d }],
  [{ lane: '1', station: 'jumps', athlete: b, judge: d, shadow: e }],
];
const at = (heat: number, part: 'athlete' | 'judge' | 'shadow'): Pick => ({ kind: 'place', heat, lane: '1', part });

test('two athletes change places and take their stations with them', () => {
  const next = exchanged(plan, at(0, 'athlete'), at(1, 'athlete'));
  expect(next?.map(([item]) => [item?.athlete, item?.station])).toEqual([
    [b, 'jumps'],
    [a, 'throws'],
  ]);
  expect(next?.map(([item]) => item?.judge)).toEqual([c, d]);
});

test('judges change places within a heat and between heats; the plan given stays as it is', () => {
  const before = JSON.stringify(plan);
  expect(exchanged(plan, at(0, 'judge'), at(0, 'shadow'))?.[0]?.[0]).toMatchObject({ judge: d, shadow: c });
  const next = exchanged(plan, at(0, 'judge'), at(1, 'shadow'));
  expect([next?.[0]?.[0]?.judge, next?.[1]?.[0]?.shadow]).toEqual([e, c]);
  expect(JSON.stringify(plan)).toBe(before);
});

test('somebody without a place takes the place of another, in either order', () => {
  const free: Pick = { kind: 'free', heat: 0, person: e };
  const next = exchanged(plan, free, at(0, 'judge'));
  expect(next?.[0]?.[0]?.judge).toBe(e);
  expect(exchanged(plan, at(0, 'judge'), free)).toEqual(next);
});

test('there is nothing to exchange with oneself, between two without a place, or where nobody is', () => {
  const free = (person: string): Pick => ({ kind: 'free', heat: 0, person });
  expect(exchanged(plan, at(0, 'judge'), at(0, 'judge'))).toBeNull();
  expect(exchanged(plan, at(0, 'shadow'), at(1, 'judge'))).toBeNull();
  expect(exchanged(plan, free(d), free(e))).toBeNull();
  expect(exchanged(plan, at(0, 'judge'), at(7, 'judge'))).toBeNull();
  expect(personAt(plan, at(7, 'judge'))).toBeNull();
});

test('one athlete’s own two stations change places', () => {
  const own: NightPlan = [plan[0] ?? [], [], [{ lane: '1', station: 'jumps', athlete: a, judge: d, shadow: e }]];
  const next = exchanged(own, at(0, 'athlete'), at(2, 'athlete'));
  expect([next?.[0]?.[0]?.station, next?.[2]?.[0]?.station]).toEqual(['jumps', 'throws']);
});

test('free are the judges who are here in a heat and have no place in it; a broken rule is found at once', () => {
  const people = [
    personOf(1, { judge: false }),
    personOf(2, { judge: false }),
    ...[3, 4, 5].map((index) => personOf(index, { athlete: false })),
    personOf(6, { athlete: false, from: arrangementOf().startAt + 600_000 }),
  ];
  const mustNotJudge = [{ judge: e, athlete: a }];
  const stations = [stationOf('throws'), stationOf('jumps')];
  const roster = freshRoster(arrangementOf({ people, mustNotJudge, shadows: true, stations }));
  expect(freeJudges(roster, plan, 0)).toEqual([e]);
  expect(freeJudges(roster, plan, 1)).toEqual([c, personId(6)]);
  const next = exchanged(plan, { kind: 'free', heat: 0, person: e }, at(0, 'judge')) ?? [];
  const banned = (one: NightPlan) => checkPlan(roster, one, nameOf).filter(({ rule }) => rule === 'must-not-judge');
  expect(banned(plan)).toEqual([]);
  expect(banned(next).map(({ message }) => message)).toEqual(['Person 5 must not judge Person 1 (heat 1).']);
});
