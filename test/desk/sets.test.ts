import { describe, expect, test } from 'vitest';
import { setsFile } from '../../shared-types/contract/exchange.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { logOf, calls as pattern, setupOf, somebody } from './fixtures.ts';
import { openTestDesk } from './open-test-desk.ts';

const setup = setupOf({ goal: { kind: 'reps', reps: 6 } });
const log = logOf(setup, [...pattern('..D...L.'), { kind: 'finish', at: 16_000 }]);

describe('a set at the desk', () => {
  test('is created once, appended once, and read back whole', async () => {
    const { calls } = await openTestDesk();
    expect(await calls.sets.create(setup)).toEqual({ outcome: 'new' });
    expect(await calls.sets.create(setup)).toEqual({ outcome: 'already' });
    const first = await calls.sets.append({ events: log });
    expect(first.acknowledgements.map((item) => item.outcome)).toEqual(log.map(() => 'new'));
    const again = await calls.sets.append({ events: log });
    expect(again.acknowledgements.map((item) => item.outcome)).toEqual(log.map(() => 'already'));
    const record = await calls.sets.get({ id: setup.id });
    expect(record.events).toEqual(log);
    expect(record.athlete.name).toBe('Ines Marrow');
    expect(record.sheet.station).toBe('Wall throw');
  });

  test('refuses other contents under a used name and keeps the first', async () => {
    const { calls } = await openTestDesk();
    await calls.sets.create(setup);
    await calls.sets.append({ events: log });
    const [, call] = log;
    const other = { ...call, at: 1_999 } as SetEvent;
    const answer = await calls.sets.append({ events: [other] });
    expect(answer.acknowledgements).toEqual([{ pad: 'pad-a', seq: 2, outcome: 'conflict' }]);
    expect((await calls.sets.get({ id: setup.id })).events).toEqual(log);
  });

  test('refuses in words what it does not know', async () => {
    const { calls } = await openTestDesk();
    await expect(calls.sets.append({ events: log })).rejects.toMatchObject({ code: 'NOT_FOUND', defined: true });
    await expect(calls.sets.create({ ...setup, athlete: somebody(9, 'Nobody').id })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await calls.sets.create(setup);
    await expect(calls.sets.create({ ...setup, loadKg: 9 })).rejects.toMatchObject({ code: 'CONFLICT' });
    const bad = calls.sets.create({ ...setup, loadKg: -1 });
    await expect(bad).rejects.toMatchObject({ code: 'BAD_REQUEST', message: expect.stringContaining('loadKg') });
  });

  test('is listed with its figures and its ribbon once they are settled', async () => {
    const { calls, desk } = await openTestDesk();
    await calls.sets.create(setup);
    await calls.sets.append({ events: log });
    await desk.settle();
    const page = await calls.sets.list({ filter: { search: 'marrow' }, after: null, limit: 10 });
    expect(page).toMatchObject({ total: 1, next: null });
    expect(page.lines[0]).toMatchObject({
      phase: 'finished',
      attempts: 8,
      counted: 6,
      noReps: 2,
      clockMs: 16_000,
      ribbon: '..D...L.',
    });
    // Only the facts tell a cost; a line read from the log alone has none.
    expect(page.lines[0]?.costS).toBeCloseTo(4, 6);
    expect((await calls.sets.list({ filter: { search: 'nobody' }, after: null, limit: 10 })).total).toBe(0);
    await expect(calls.sets.list({ filter: {}, after: 'x', limit: 10 })).rejects.toMatchObject({ code: 'BAD_REQUEST' });
  });

  test('is unfinished between go and the end, and no longer', async () => {
    const { calls } = await openTestDesk();
    await calls.sets.create(setup);
    await calls.sets.append({ events: log.slice(0, 4) });
    expect(await calls.sets.unfinished()).toMatchObject([{ id: setup.id, phase: 'running', ribbon: '..D' }]);
    await calls.sets.append({ events: log.slice(4) });
    expect(await calls.sets.unfinished()).toEqual([]);
  });

  test('is watched without a gap', async () => {
    const { calls } = await openTestDesk();
    await calls.sets.create(setup);
    await calls.sets.append({ events: log.slice(0, 3) });
    const stream = await calls.sets.watch({ id: setup.id });
    const seen: SetEvent[] = [];
    const first = await stream.next();
    if (!first.done) seen.push(...first.value.events);
    for (const event of log.slice(3)) await calls.sets.append({ events: [event] });
    while (seen.length < log.length) {
      const next = await stream.next();
      if (next.done) break;
      seen.push(...next.value.events);
    }
    await stream.return();
    expect(seen).toEqual(log);
  });

  test('is exported as CSV, as JSON and with its schema', async () => {
    const { calls, desk } = await openTestDesk();
    await calls.sets.create(setup);
    await calls.sets.append({ events: log });
    await desk.settle();
    const csv = await calls.sets.export({ filter: {}, format: 'csv' });
    expect(csv.text.trimEnd().split('\r\n')).toHaveLength(9);
    const json = await calls.sets.export({ filter: {}, ids: [setup.id], format: 'json' });
    expect(setsFile.parse(JSON.parse(json.text)).sets).toEqual([{ setup, events: log }]);
    const schema = await calls.sets.export({ filter: {}, format: 'json-schema' });
    expect(JSON.parse(schema.text)).toHaveProperty('$schema');
  });
});

describe('the report of a set', () => {
  test('adds up: counts, ledger and cost by hand', async () => {
    const { calls } = await openTestDesk();
    await calls.sets.create(setup);
    await calls.sets.append({ events: log });
    const report = await calls.reports.set({ id: setup.id });
    expect(report.counts).toEqual({ attempts: 8, counted: 6, cautions: 0, noReps: 2, unexplained: 0, metres: 0 });
    // Every cycle is 2.0 s. Each no-rep puts 4.0 s between two counted reps where 2.0 s are expected: 2.0 s each.
    expect(report.cost.total?.value).toBeCloseTo(4, 6);
    expect(report.cost.repeatS).toBeCloseTo(4, 6);
    expect(report.cost.disruptionS).toBeCloseTo(0, 6);
    expect(report.ledger).toEqual({ startMs: 2_000, workMs: 10_000, noRepMs: 4_000, breakMs: 0 });
    expect(report.reasons.map((line) => [line.code, line.noReps])).toEqual([
      ['depth', 1],
      ['line', 1],
    ]);
    // Wilson 1927 for 2 of 8 at 95 %: 7.1 % to 59.1 %.
    expect(report.rate?.low).toBeCloseTo(0.0715, 3);
    expect(report.rate?.high).toBeCloseTo(0.5907, 3);
    expect(report.train?.cue).toBe('Lower!');
  });
});
