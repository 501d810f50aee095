import { expect, test } from 'vitest';
import { setsFile } from '../../../shared-types/contract/exchange.ts';
import { athlete, judge } from '../fixtures.ts';
import { athleteModel, DAY_MS, deskWith, faultModel, firstDay, second, simulated, strict } from './gym.ts';

const sets = Array.from({ length: 24 }, (_, number) =>
  simulated(number, athleteModel({ faults: [faultModel('depth', 0.09 - number * 0.003), faultModel('line', 0.04)] }), {
    athlete: number % 3 === 2 ? second.id : athlete.id,
    judge: number % 2 === 0 ? judge.id : strict.id,
    at: firstDay + Math.floor(number / 2) * 3 * DAY_MS + (number % 2) * 1_200_000,
    loadKg: number % 4 === 0 ? 9 : 6,
  }),
);

/** What an exported log says by itself: calls in order, slips and reversals applied, nothing else of the program used. */
function readFile(text: string) {
  return setsFile.parse(JSON.parse(text)).sets.map(({ setup, events }) => {
    const attempts = events.flatMap((event) =>
      event.kind === 'call'
        ? [{ key: `${event.pad} ${event.seq}`, no: event.verdict === 'no-rep', faults: event.faults }]
        : [],
    );
    for (const event of events) {
      if (event.kind !== 'reverse' && event.kind !== 'explain') continue;
      const call = attempts.find((item) => item.key === `${event.of.pad} ${event.of.seq}`);
      if (call !== undefined && event.kind === 'reverse') call.no = event.verdict === 'no-rep';
      if (call !== undefined) call.faults = event.faults;
    }
    const go = events.find((event) => event.kind === 'go');
    const at = go?.kind === 'go' ? go.wallClock : 0;
    return { setup, at, attempts: attempts.length, noReps: attempts.filter((item) => item.no) };
  });
}

/** Logistic regression of one predictor by Newton's method, with Pearson's dispersion: ten lines of textbook. */
function fitLine(x: readonly number[], y: readonly number[], n: readonly number[]) {
  let [a, b] = [0, 0];
  const p = (i: number) => 1 / (1 + Math.exp(-a - b * (x[i] ?? 0)));
  const sum = (of: (i: number) => number) => x.reduce((total, _, i) => total + of(i), 0);
  const weight = (i: number) => (n[i] ?? 0) * p(i) * (1 - p(i));
  let information = [0, 0, 0];
  for (let step = 0; step < 50; step += 1) {
    information = [sum(weight), sum((i) => weight(i) * (x[i] ?? 0)), sum((i) => weight(i) * (x[i] ?? 0) ** 2)];
    const [aa = 0, ab = 0, bb = 0] = information;
    const determinant = aa * bb - ab * ab;
    const u = sum((i) => (y[i] ?? 0) - (n[i] ?? 0) * p(i));
    const v = sum((i) => ((y[i] ?? 0) - (n[i] ?? 0) * p(i)) * (x[i] ?? 0));
    [a, b] = [a + (bb * u - ab * v) / determinant, b + (aa * v - ab * u) / determinant];
  }
  const [aa = 0, ab = 0, bb = 0] = information;
  const pearson = sum((i) => ((y[i] ?? 0) - (n[i] ?? 0) * p(i)) ** 2 / weight(i)) / (x.length - 2);
  return { a, b, slopeError: Math.sqrt((Math.max(1, pearson) * aa) / (aa * bb - ab * ab)), dispersion: pearson };
}

test('the athlete’s figures are those of the exported logs, computed by themselves', async () => {
  const { calls } = await deskWith(sets);
  const file = await calls.sets.export({ filter: { athlete: athlete.id }, format: 'json' });
  const own = readFile(file.text).sort((one, other) => one.at - other.at);
  const view = await calls.review.athlete({ filter: { athlete: athlete.id, sheet: 'wall-throw' } });
  expect(view.points.map(({ id, at, attempts, noReps }) => [id, at, attempts, noReps])).toEqual(
    own.map(({ setup, at, attempts, noReps }) => [setup.id, at, attempts, noReps.length]),
  );
  const attempts = own.reduce((sum, set) => sum + set.attempts, 0);
  const noReps = own.flatMap((set) => set.noReps);
  expect(view.totals).toMatchObject({ sets: 16, attempts, noReps: noReps.length });
  expect(view.totals.rate?.value).toBeCloseTo(noReps.length / attempts, 12);
  for (const code of ['depth', 'line']) {
    const line = view.reasons.lines.find((item) => item.code === code);
    expect(line?.noReps).toBe(noReps.filter((item) => item.faults.includes(code)).length);
  }

  const first = own[0]?.at ?? 0;
  const span = (own.at(-1)?.at ?? 0) - first;
  const line = fitLine(
    own.map((set) => (set.at - first) / span),
    own.map((set) => set.noReps.length),
    own.map((set) => set.attempts),
  );
  const { fitted } = view.trend;
  expect(fitted?.from.value).toBeCloseTo(1 / (1 + Math.exp(-line.a)), 8);
  expect(fitted?.to.value).toBeCloseTo(1 / (1 + Math.exp(-line.a - line.b)), 8);
  expect(fitted?.dispersion).toBeCloseTo(Math.max(1, line.dispersion), 8);

  // Seconds: the report of each set, added up.
  const reports = await Promise.all(own.map(({ setup }) => calls.reports.set({ id: setup.id })));
  const seconds = reports.reduce((sum, report) => sum + (report.cost.total?.value ?? 0), 0);
  const counted = reports.reduce((sum, report) => sum + report.counts.counted, 0);
  expect(view.cost.totalS?.value).toBeCloseTo(seconds, 8);
  expect(view.cost.per100S?.value).toBeCloseTo((100 * seconds) / counted, 8);
  const added = view.reasons.lines.reduce((sum, item) => sum + (item.per100S?.value ?? 0), 0);
  expect(added).toBeCloseTo(view.cost.per100S?.value ?? Number.NaN, 8);

  // Place: tenths of the set by reps counted before the attempt over the goal's 60.
  const tenths = Array.from({ length: 10 }, () => ({ attempts: 0, noReps: 0 }));
  for (const report of reports) {
    let before = 0;
    for (const attempt of report.attempts) {
      const tenth = tenths[Math.min(9, Math.floor(before / 6))];
      if (tenth === undefined) continue;
      tenth.attempts += 1;
      if (attempt.verdict === 'no-rep') tenth.noReps += 1;
      else before += 1;
    }
  }
  expect(view.place.bins.map(({ attempts: all, noReps: bad }) => ({ attempts: all, noReps: bad }))).toEqual(tenths);
});

test('gym and judge add up to the same logs', async () => {
  const { calls } = await deskWith(sets);
  const all = readFile((await calls.sets.export({ filter: {}, format: 'json' })).text);
  const gym = await calls.review.gym({ filter: {} });
  const noReps = all.reduce((sum, set) => sum + set.noReps.length, 0);
  const attempts = all.reduce((sum, set) => sum + set.attempts, 0);
  expect(gym.totals).toMatchObject({ sets: 24, attempts, noReps });
  for (const lines of [gym.athletes, gym.judges, gym.stations, gym.points]) {
    expect(lines.reduce((sum, line) => sum + line.noReps, 0)).toBe(noReps);
    expect(lines.reduce((sum, line) => sum + line.attempts, 0)).toBe(attempts);
  }
  expect(gym.span).toBe('day');
  expect(gym.points).toHaveLength(12);
  expect(gym.place.bins.reduce((sum, bin) => sum + bin.attempts, 0)).toBe(attempts);

  // Mantel and Haenszel by hand: one stratum an athlete.
  const view = await calls.review.judge({ filter: { judge: judge.id } });
  let [weights, differences] = [0, 0];
  for (const who of [athlete.id, second.id]) {
    const count = (mine: boolean) => {
      const own = all.filter(({ setup }) => setup.athlete === who && (setup.judge === judge.id) === mine);
      return {
        bad: own.reduce((sum, set) => sum + set.noReps.length, 0),
        all: own.reduce((sum, set) => sum + set.attempts, 0),
      };
    };
    const [mine, others] = [count(true), count(false)];
    const weight = (mine.all * others.all) / (mine.all + others.all);
    weights += weight;
    differences += weight * (mine.bad / mine.all - others.bad / others.all);
  }
  expect(view.overall.strata).toBe(2);
  expect(view.overall.difference?.value).toBeCloseTo(differences / weights, 12);
  expect(view.totals.sets).toBe(12);
  expect(view.drift.sessions).toBe(12);
  const byReason = view.reasons.reduce((sum, line) => sum + line.own.noReps, 0);
  expect(byReason).toBe(view.totals.noReps);
});
