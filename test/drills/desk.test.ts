import { describe, expect, it } from 'vitest';
import { foldDrill } from '../../shared-types/drills/fold.ts';
import { usualCriteria } from '../../shared-types/drills/ready.ts';
import { judge } from '../desk/fixtures.ts';
import { openTestDesk } from '../desk/open-test-desk.ts';
import { LogWriter, lineTask, wallDrill } from './fixtures.ts';

/** A judge who lets squats of up to 2 cm too high through, without noise, over 40 reps. */
function logOf(drill = wallDrill()) {
  const log = new LogWriter(drill, `pad-${drill.id.slice(-4)}`);
  for (let trial = 0; trial < 40; trial += 1) {
    const depth = -12 + trial / 2;
    log.rep(trial, { depth });
    log.call(trial, depth < -2 ? ['depth'] : null);
  }
  log.put('end', { why: 'all-shown' });
  return log;
}

const drill = wallDrill(undefined, { createdAt: Date.now() - 60_000 });

async function deskWithDrill() {
  const { calls, desk } = await openTestDesk();
  await calls.drills.create(drill);
  await calls.drills.append({ events: logOf(drill).events });
  return { calls, desk };
}

describe('the desk’s calls about drills', () => {
  it('keep a drill and its log once', async () => {
    const { calls } = await deskWithDrill();
    const { events } = logOf(drill);
    expect(await calls.drills.create(drill)).toEqual({ outcome: 'already' });
    await expect(calls.drills.create({ ...drill, seed: 8 })).rejects.toMatchObject({ code: 'CONFLICT' });
    const again = await calls.drills.append({ events: events.slice(0, 2) });
    expect(again.acknowledgements.map((one) => one.outcome)).toEqual(['already', 'already']);
    const [first] = events;
    if (first === undefined) throw new Error('a log has events');
    const other = await calls.drills.append({ events: [{ ...first, at: 5 }] });
    expect(other.acknowledgements).toEqual([{ pad: first.pad, seq: first.seq, outcome: 'conflict' }]);
    const record = await calls.drills.get({ id: drill.id });
    expect(record.events).toEqual(events);
    expect(record.drill).toEqual(drill);
  });

  it('refuse what is not there, in words', async () => {
    const { calls } = await openTestDesk();
    await expect(calls.drills.get({ id: drill.id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(calls.drills.report({ id: drill.id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(calls.drills.append({ events: logOf(drill).events })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    await expect(calls.drills.judge({ judge: drill.id, sheet: 'wall-throw' })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await expect(calls.drills.judge({ judge: judge.id, sheet: 'none' })).rejects.toMatchObject({ code: 'NOT_FOUND' });
    const list = { filter: {}, after: 'nonsense', limit: 5 };
    await expect(calls.drills.list(list)).rejects.toMatchObject({ code: 'BAD_REQUEST' });
    expect(await calls.drills.ready({})).toEqual([]);
  });

  it('report a drill', async () => {
    const { calls } = await deskWithDrill();
    const report = await calls.drills.report({ id: drill.id });
    expect(report.counts).toEqual({ shown: 40, called: 40, unanswered: 0, spoilt: 0, extraCalls: 0, slips: 0 });
    // Depth -12 to -2.5 called, -2 to -0.5 missed, 0 to 7.5 counted.
    expect(report.detection).toMatchObject({ hits: 20, misses: 4, falseAlarms: 0, correctRejections: 16 });
    const depth = report.faults.find((fault) => fault.code === 'depth');
    expect(depth?.verdict.kind).toBe('lenient');
    expect(depth?.strictness?.value).toBeCloseTo(-2.25, 0);
    expect(report.reasons).toMatchObject({ right: 20, of: 20, unexplained: 0 });
    expect(report.reaction.all.medianMs).toBe(500);
    expect(report.trials).toHaveLength(40);
    expect(report.faults.find((fault) => fault.code === 'line')?.verdict).toEqual({
      kind: 'cannot-tell',
      why: 'all-alike',
    });
  });

  it('list drills a page at a time, practice left out', async () => {
    const { calls } = await deskWithDrill();
    const ids = ['00000000-0000-4000-8000-00000000d002', '00000000-0000-4000-8000-00000000d003'];
    const [second, practice] = ids;
    await calls.drills.create({ ...wallDrill(lineTask), id: second ?? '', createdAt: drill.createdAt + 1 });
    await calls.drills.create({ ...drill, id: practice ?? '', practice: true });
    const first = await calls.drills.list({ filter: {}, after: null, limit: 1 });
    expect(first).toMatchObject({ total: 2, lines: [{ id: second, phase: 'ready', called: 0 }] });
    const rest = await calls.drills.list({ filter: {}, after: first.next, limit: 1 });
    expect(rest).toMatchObject({
      next: null,
      lines: [{ id: drill.id, phase: 'ended', shown: 40, called: 40, right: 36 }],
    });
    expect((await calls.drills.list({ filter: { kind: 'line' }, after: null, limit: 9 })).total).toBe(1);
    expect((await calls.drills.list({ filter: { practice: 'only' }, after: null, limit: 9 })).total).toBe(1);
  });

  it('tell a judge’s history and who is ready, by the gym’s own criteria', async () => {
    const { calls } = await deskWithDrill();
    const history = await calls.drills.judge({ judge: judge.id, sheet: 'wall-throw' });
    const depth = history.faults.find((fault) => fault.score.code === 'depth');
    expect(history).toMatchObject({ drills: 1, trials: 40, ready: false });
    expect(depth?.points).toHaveLength(1);
    expect(depth?.verdict).toEqual({ kind: 'ready' });
    expect(await calls.drills.criteria()).toEqual(usualCriteria);
    const off = { leastDPrime: null, mostCriterion: null, mostStrictness: null, mostPrecision: null };
    const faults = ['line', 'aim', 'stand', 'bounce'].map((code) => ({
      sheet: 'wall-throw',
      code,
      asked: false,
      bounds: off,
    }));
    await calls.drills.setCriteria({ ...usualCriteria, faults });
    expect(await calls.drills.ready({})).toMatchObject([{ judge: { id: judge.id }, ready: true, trials: 40 }]);
    const hard = { ...usualCriteria, faults, units: { ...usualCriteria.units, cm: { ...off, mostStrictness: 1 } } };
    expect(await calls.drills.ready({ criteria: hard })).toMatchObject([{ ready: false }]);
  });

  it('export logs that fold to the same, a table of reps, and the schema', async () => {
    const { calls } = await deskWithDrill();
    const json = await calls.drills.export({ filter: {}, format: 'json' });
    const [kept] = JSON.parse(json.text).drills;
    expect(foldDrill(kept.drill, kept.events)).toEqual(foldDrill(drill, logOf(drill).events));
    const csv = await calls.drills.export({ filter: {}, format: 'csv' });
    const rows = csv.text.trim().split('\r\n');
    expect(rows).toHaveLength(41);
    expect(rows[1]).toContain('depth=-12.00');
    expect(rows[1]).toContain('no-rep,depth,hit,0.500');
    const schema = await calls.drills.export({ filter: {}, format: 'json-schema' });
    expect(JSON.parse(schema.text).properties.format.const).toBe('plumbline-drills');
  });

  it('keep the log append-only in the database itself', async () => {
    const { desk } = await deskWithDrill();
    const path = desk.ledger.path;
    const { default: Database } = await import('better-sqlite3');
    const other = new Database(path);
    for (const table of ['drills', 'drill_events']) {
      expect(() => other.exec(`UPDATE ${table} SET body = '{}'`)).toThrow(/never changes/);
      expect(() => other.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    }
    other.close();
  });
});
