import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { planOf } from '../../../main/desk/review/race-plan.ts';
import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import type { Forecast, RaceCard } from '../../../shared-types/contract/review/plans.ts';
import { athlete } from '../fixtures.ts';
import { athleteModel, deskWith, faultModel, simulated } from './gym.ts';

const filter: AthleteFilter = { athlete: athlete.id, sheet: 'wall-throw' };
const goal = { kind: 'reps', reps: 100 } as const;
const flat = (value: number) => ({ value, low: value, high: value });

const own: RaceCard['own'] = {
  sets: 10,
  cleanS: 2.5,
  quickestS: 2.2,
  startMs: 2_000,
  breaksPer100: 3,
  breakMs: 5_000,
};
const forecast: Forecast = {
  kind: 'forecast',
  reps: 100,
  scenarios: [{ name: 'present', rate: flat(0.05), noReps: flat(5), seconds: flat(15), repsLost: null }],
  perNoRepS: flat(3),
  from: { sets: 10, attempts: 1_000, noReps: 50 },
};

describe('the plan of a race', () => {
  test('at the own usual pace: start, reps, no-reps and breaks add up', () => {
    // 2 s + 100 x 2.5 s + 15 s + 3 breaks of 5 s = 282 s.
    const plan = planOf(own, forecast, { goal, wishedMs: null });
    expect(plan).toMatchObject({ kind: 'plan', effort: 'easy', targetS: 2.5, totalMs: 282_000, noRepMs: 15_000 });
    if (plan.kind !== 'plan') return;
    expect(plan.splits.map((split) => split.reps)).toEqual([25, 50, 75, 100]);
    // A quarter of reps and no-reps is 66.25 s; the first comes after the start, each later one after a break more.
    expect(plan.splits.map((split) => split.atMs)).toEqual([68_250, 139_500, 210_750, 282_000]);
    expect(plan.splits.map((split) => split.breakMs)).toEqual([5_000, 5_000, 5_000, 0]);
  });

  test('a wished time quickens the reps, then takes the breaks, then is out of reach', () => {
    const at = (seconds: number) => planOf(own, forecast, { goal, wishedMs: seconds * 1_000 });
    expect(at(300)).toMatchObject({ kind: 'plan', effort: 'easy', targetS: 2.68 });
    expect(at(262)).toMatchObject({ kind: 'plan', effort: 'stretch', targetS: 2.3, totalMs: 262_000 });
    const without = at(238);
    expect(without).toMatchObject({ kind: 'plan', effort: 'stretch', targetS: 2.21 });
    expect(without.kind === 'plan' && without.splits.every((split) => split.breakMs === 0)).toBe(true);
    expect(at(230)).toEqual({ kind: 'out-of-reach', reps: 100, targetS: 2.13, quickestMs: 237_000 });
    expect(at(10)).toMatchObject({ kind: 'out-of-reach', targetS: null });
  });

  test('without a known pace there is none', () => {
    const plan = planOf({ ...own, cleanS: null, quickestS: null }, forecast, { goal, wishedMs: null });
    expect(plan).toEqual({ kind: 'too-few', why: 'no-cost' });
  });
});

describe('forecast, race card and files', async () => {
  const sets = Array.from({ length: 12 }, (_, number) =>
    simulated(number, athleteModel({ faults: [faultModel('depth', 0.08), faultModel('line', 0.02)] })),
  );

  test('half the rate costs about half, a given rate is taken as given', async () => {
    const { calls } = await deskWith(sets);
    const found = await calls.review.forecast({ filter, goal, rate: 0.02 });
    if (found.kind !== 'forecast') throw new Error('There is a forecast.');
    const [present, half, given] = found.scenarios;
    expect(found.scenarios.map((item) => item.name)).toEqual(['present', 'half', 'given']);
    expect(found.reps).toBe(100);
    // Negative binomial: n p / (1 - p) no-reps for n counted.
    const rate = present?.rate.value ?? 0;
    expect(present?.noReps.value).toBeGreaterThan(0.85 * ((100 * rate) / (1 - rate)));
    expect(present?.noReps.value).toBeLessThan(1.15 * ((100 * rate) / (1 - rate)));
    const ratio = (half?.seconds?.value ?? 0) / (present?.seconds?.value ?? 1);
    expect(ratio).toBeGreaterThan(0.4);
    expect(ratio).toBeLessThan(0.6);
    expect(given?.rate).toEqual({ value: 0.02, low: 0.02, high: 0.02 });
    expect(await calls.review.forecast({ filter, goal: { kind: 'open' } })).toEqual({
      kind: 'too-few',
      why: 'goal-unknown',
    });
    expect(await calls.review.forecast({ filter, goal: { kind: 'metres', metres: 80 } })).toEqual({
      kind: 'too-few',
      why: 'goal-unknown',
    });
    const clock = await calls.review.forecast({ filter, goal: { kind: 'clock', milliseconds: 180_000 } });
    expect(clock.kind === 'forecast' && clock.scenarios[0]?.repsLost?.value).toBeGreaterThan(1);
  });

  test('the race card has the plan, the own faults with their cues, and the forecast', async () => {
    const { calls } = await deskWith(sets);
    const card = await calls.review.raceCard({ filter, goal, wishedMs: null });
    expect(card.plan).toMatchObject({ kind: 'plan', effort: 'easy', reps: 100 });
    expect(card.faults.map((fault) => [fault.code, fault.cue])).toEqual([
      ['depth', 'Lower!'],
      ['line', 'Higher!'],
    ]);
    expect(card.own.cleanS).toBeGreaterThan(2);
    expect(card.forecast).toEqual(await calls.review.forecast({ filter, goal }));
  });

  test('the file of a view holds the view: JSON whole, CSV a row a figure', async () => {
    const { calls } = await deskWith(sets);
    const view = await calls.review.athlete({ filter, rows: 5 });
    const of = { view: 'athlete', filter, rows: 5 } as const;
    const json = await calls.review.export({ format: 'json', of });
    expect(json.mediaType).toBe('application/json');
    expect(json.fileName).toMatch(/^review-athlete-\d{4}-\d\d-\d\d\.json$/);
    expect(JSON.parse(json.text)).toMatchObject({ format: 'plumbline-review', formatVersion: 1, of, figures: view });
    const csv = await calls.review.export({ format: 'csv', of });
    const { data, errors } = Papa.parse<Record<string, string>>(csv.text, { header: true, skipEmptyLines: true });
    expect(errors).toEqual([]);
    const cell = (part: string, item: string, figure: string) =>
      data.find((row) => row.part === part && row.item === item && row.figure === figure);
    expect(Number(cell('totals', '', 'attempts')?.value)).toBe(view.totals.attempts);
    expect(Number(cell('cost', '', 'per100S')?.low)).toBe(view.cost.per100S?.low);
    const [line] = view.reasons.lines;
    expect(Number(cell('reasons', 'wall-throw/depth', 'lines.per100S')?.value)).toBe(line?.per100S?.value);
    const [point] = view.points;
    expect(Number(cell('points', point?.id ?? '', 'rate')?.high)).toBe(point?.rate?.high);
    expect(cell('trend', '', 'verdict.kind')?.value).toBe(view.trend.verdict.kind);
    for (const name of ['judge', 'gym', 'comparison', 'forecast', 'race-card'] as const) {
      const asked = {
        judge: { view: 'judge', filter: { judge: sets[0]?.setup.judge ?? '' } },
        gym: { view: 'gym', filter: {} },
        comparison: { view: 'comparison', a: filter, b: filter },
        forecast: { view: 'forecast', filter, goal },
        'race-card': { view: 'race-card', filter, goal, wishedMs: null },
      } as const;
      const file = await calls.review.export({ format: 'csv', of: asked[name] });
      expect(file.text.split('\r\n').length).toBeGreaterThan(5);
    }
  });
});
