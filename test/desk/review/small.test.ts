import { describe, expect, test } from 'vitest';
import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import { athlete, judge, logOf, calls as pattern, setupOf } from '../fixtures.ts';
import { DAY_MS, deskWith, firstDay, type GymSet, numbersIn, setId } from './gym.ts';

const filter: AthleteFilter = { athlete: athlete.id, sheet: 'wall-throw' };
const goal = { kind: 'reps', reps: 100 } as const;

/** A finished set of calls at an even 2 s, a day apart. */
function even(number: number, marks: string, changes: Parameters<typeof setupOf>[0] = {}): GymSet {
  const setup = setupOf({ id: setId(number), createdAt: firstDay + number * DAY_MS - 60_000, ...changes });
  const end = 2_000 * (marks.length + 1);
  const events = logOf(setup, [...pattern(marks), { kind: 'finish', at: end - 2_000 }], `pad-${number}`);
  return { setup, events };
}

describe('nothing judged yet', () => {
  test('every view answers with zeros, nulls and the reason', async () => {
    const { calls } = await deskWith([]);
    expect(await calls.review.subjects()).toEqual({ athletes: [], judges: [], stations: [] });
    const view = await calls.review.athlete({ filter });
    expect(view.totals).toMatchObject({ sets: 0, attempts: 0, rate: null, firstAt: null, designEffect: 1 });
    expect(view.cost).toMatchObject({ setsWithCost: 0, totalS: null, per100S: null, perNoRepS: null });
    const none = { kind: 'too-few', why: 'no-sets' };
    expect(view.trend).toMatchObject({ verdict: none, fitted: null, curve: [], centre: null });
    expect([view.place.verdict, view.hurry.verdict, view.pacing.overall.verdict]).toEqual([none, none, none]);
    expect(view.pacing.fastStart.verdict).toEqual(none);
    expect(view).toMatchObject({ points: [], picture: [], train: null, reasons: { lines: [], intervals: null } });
    const gym = await calls.review.gym({ filter: {} });
    expect(gym).toMatchObject({ points: [], athletes: [], judges: [], stations: [], train: null });
    const judged = await calls.review.judge({ filter: { judge: judge.id } });
    expect(judged.overall.verdict).toEqual(none);
    expect(judged.drift.verdict).toEqual(none);
    expect(judged.slips).toEqual({ count: 0, per100: null });
    const compared = await calls.review.compare({ a: filter, b: filter });
    expect(compared.verdict).toEqual({ kind: 'too-few', side: 'a', why: 'no-sets' });
    expect(await calls.review.forecast({ filter, goal })).toEqual(none);
    expect((await calls.review.raceCard({ filter, goal, wishedMs: null })).plan).toEqual(none);
  });

  test('who is not there is told', async () => {
    const { calls } = await deskWith([]);
    const nobody = { ...filter, athlete: '00000000-0000-4000-8000-000000000999' };
    await expect(calls.review.athlete({ filter: nobody })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    const nowhere = { ...filter, sheet: 'no-such-sheet' };
    await expect(calls.review.athlete({ filter: nowhere })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(calls.review.judge({ filter: { judge: nobody.athlete } })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await expect(calls.review.gym({ filter: { sheet: 'no-such-sheet' } })).resolves.toMatchObject({ points: [] });
  });
});

describe('one set of three reps', () => {
  test('says what three reps say', async () => {
    const { calls } = await deskWith([even(1, '..D')]);
    const view = await calls.review.athlete({ filter });
    // Wilson 1927 for 1 of 3: 0.0615 to 0.7923 (computed by hand from the formula).
    expect(view.totals.rate?.value).toBeCloseTo(1 / 3, 12);
    expect(view.totals.rate?.low).toBeCloseTo(0.0615, 4);
    expect(view.totals.rate?.high).toBeCloseTo(0.7923, 4);
    const few = { kind: 'too-few', why: 'few-sets' };
    expect([view.trend.verdict, view.place.verdict]).toEqual([few, few]);
    expect(view.hurry.verdict.kind).toBe('too-few');
    expect(view.pacing.sets[0]?.verdict).toEqual({ kind: 'too-few', why: 'few-attempts' });
    expect(view.points).toMatchObject([{ id: setId(1), attempts: 3, noReps: 1, limits: null, outside: false }]);
    expect(view.picture).toEqual([{ id: setId(1), at: firstDay + DAY_MS, marks: '..D', cyclesS: [2, 2, 2] }]);
    expect(view.reasons.lines).toMatchObject([{ code: 'depth', noReps: 1, share: 1, sets: 1, latest: [setId(1)] }]);
    expect(view.train).toMatchObject({ code: 'depth', cue: 'Lower!', share: 1, next: null });
    for (const value of numbersIn(view)) expect(Number.isFinite(value)).toBe(true);
    const forecast = await calls.review.forecast({ filter, goal });
    for (const value of numbersIn(forecast)) expect(Number.isFinite(value)).toBe(true);
    for (const value of numbersIn(await calls.review.gym({ filter: {} }))) expect(Number.isFinite(value)).toBe(true);
    const judged = await calls.review.judge({ filter: { judge: judge.id } });
    expect(judged.overall.verdict).toEqual({ kind: 'too-few', why: 'no-others' });
  });

  test('without a no-rep, and with nothing else', async () => {
    const clean = await deskWith([1, 2, 3, 4, 5, 6].map((number) => even(number, '......')));
    const view = await clean.calls.review.athlete({ filter });
    expect(view.trend.verdict).toEqual({ kind: 'too-few', why: 'no-no-reps' });
    expect(view.place.verdict).toEqual({ kind: 'too-few', why: 'no-no-reps' });
    expect(view.cost.totalS).toEqual({ value: 0, low: 0, high: 0 });
    expect(view.cost.per100S).toBeNull();
    const bad = await deskWith([1, 2, 3, 4, 5, 6].map((number) => even(number, 'DDL')));
    const worse = await bad.calls.review.athlete({ filter });
    expect(worse.trend.verdict).toEqual({ kind: 'too-few', why: 'only-no-reps' });
    expect(worse.cost).toMatchObject({ setsWithCost: 0, totalS: null, per100S: null });
    expect(worse.train).toMatchObject({ code: 'depth', by: 'no-reps', per100S: null });
    expect(worse.train?.share).toBeCloseTo(2 / 3, 12);
    for (const value of numbersIn(worse)) expect(Number.isFinite(value)).toBe(true);
  });
});

describe('five sets by hand', () => {
  // Even 2 s, so that a single no-rep between counted reps costs the 2 s that it took, and a run of two 4 s.
  const marks = ['.....D....', '....L.....', '..........', '...DD.....', '.....D..L.'];
  const sets = marks.map((text, index) => even(index + 1, text, { tags: index < 2 ? ['heat'] : [] }));

  test('counts, costs and reasons add up', async () => {
    const { calls } = await deskWith(sets);
    const view = await calls.review.athlete({ filter, rows: 3 });
    expect(view.totals).toMatchObject({ sets: 5, attempts: 50, noReps: 6, counted: 44, firstAt: firstDay + DAY_MS });
    expect(view.cost.setsWithCost).toBe(5);
    expect(view.cost.totalS?.value).toBeCloseTo(12, 6);
    expect(view.cost.per100S?.value).toBeCloseTo((100 * 12) / 44, 6);
    expect(view.cost.perNoRepS?.value).toBeCloseTo(2, 6);
    // Cochran 1977, 6.3 by hand: seconds 2, 2, 0, 4, 4 over reps 9, 9, 10, 8, 8; Student's t with 4 degrees is 2.776445.
    const seconds = [2, 2, 0, 4, 4];
    const counted = [9, 9, 10, 8, 8];
    const ratio = 12 / 44;
    const squares = seconds.reduce((sum, value, i) => sum + (value - ratio * (counted[i] ?? 0)) ** 2, 0);
    const half = (2.776445 * Math.sqrt((5 / 4) * squares)) / 44;
    expect(view.cost.per100S?.high).toBeCloseTo(100 * (ratio + half), 4);
    expect(view.cost.per100S?.low).toBeCloseTo(100 * (ratio - half), 4);
    const lines = view.reasons.lines.map(({ code, noReps, sets: own }) => [code, noReps, own]);
    expect(lines).toEqual([
      ['depth', 4, 3],
      ['line', 2, 2],
    ]);
    expect(view.reasons.lines[0]?.per100S?.value).toBeCloseTo((100 * 8) / 44, 6);
    expect(view.reasons.intervals).toBe('between-sets');
    expect(view.reasons.lines[0]?.latest).toEqual([5, 4, 1].map(setId));
    expect(view.picture.map((row) => row.marks)).toEqual(marks.slice(2));
    // Rao & Scott 1992 by hand.
    const rate = 6 / 50;
    const spread = [1, 1, 0, 2, 2].reduce((sum, count) => sum + (count - 10 * rate) ** 2, 0);
    const effect = ((5 / 4) * spread) / 50 / (rate * (1 - rate));
    expect(view.totals.designEffect).toBeCloseTo(Math.max(1, effect), 10);
    const ledger = view.points[3]?.ledger;
    expect((ledger?.startMs ?? 0) + (ledger?.workMs ?? 0) + (ledger?.noRepMs ?? 0) + (ledger?.breakMs ?? 0)).toBe(
      20_000,
    );
  });

  test('the filter narrows by tag, load, condition and span', async () => {
    const { calls } = await deskWith(sets);
    const count = async (changes: Partial<AthleteFilter>) =>
      (await calls.review.athlete({ filter: { ...filter, ...changes } })).totals.sets;
    expect(await count({ tags: ['heat'] })).toBe(2);
    expect(await count({ loadsKg: [6] })).toBe(5);
    expect(await count({ loadsKg: [null, 9] })).toBe(0);
    expect(await count({ before: ['run'] })).toBe(0);
    expect(await count({ judge: judge.id })).toBe(5);
    expect(await count({ from: firstDay + 3 * DAY_MS })).toBe(3);
    expect(await count({ to: firstDay + 3 * DAY_MS })).toBe(2);
  });

  test('two faults on one no-rep count half for each', async () => {
    const [first] = sets;
    if (first === undefined) throw new Error('There is a first set.');
    const events = first.events.map((event) =>
      event.kind === 'call' && event.verdict === 'no-rep' ? { ...event, faults: ['depth', 'line'] } : event,
    );
    const { calls } = await deskWith([{ setup: first.setup, events }]);
    const view = await calls.review.athlete({ filter });
    expect(view.reasons.lines.map(({ code, noReps }) => [code, noReps])).toEqual([
      ['depth', 0.5],
      ['line', 0.5],
    ]);
    expect(view.reasons.intervals).toBe('within-sets');
    expect(view.cost.per100S?.value).toBeCloseTo((100 * 2) / 9, 6);
  });

  test('practice, shadows and sets that still run stay out', async () => {
    const running = even(20, '..D..');
    const { calls } = await deskWith([
      ...sets,
      even(21, '..D..', { practice: true }),
      even(22, '..D..', { role: 'shadow' }),
      { setup: running.setup, events: running.events.slice(0, -1) },
    ]);
    expect((await calls.review.athlete({ filter })).totals.sets).toBe(5);
    const { athletes, judges, stations } = await calls.review.subjects();
    expect(athletes).toMatchObject([
      { person: { id: athlete.id }, stations: [{ sheet: 'wall-throw', sets: 5, attempts: 50, noReps: 6 }] },
    ]);
    expect(judges).toHaveLength(1);
    expect(stations).toMatchObject([
      { station: 'Wall throw', loadsKg: [6], before: ['fresh'], tags: [{ tag: 'heat', sets: 2 }] },
    ]);
  });

  test('the same data give the same answer', async () => {
    const [one, other] = await Promise.all([deskWith(sets), deskWith([...sets].reverse())]);
    const views = await Promise.all([one, other].map(({ calls }) => calls.review.athlete({ filter })));
    expect(views[0]).toEqual(views[1]);
  });
});
