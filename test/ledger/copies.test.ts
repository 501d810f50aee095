import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Copy } from '../../main/ledger/copies.ts';
import { inspect } from '../../main/ledger/inspect.ts';
import { SCHEMA_VERSION } from '../../main/ledger/migrations/list.ts';
import { openReader } from '../../main/ledger/open.ts';
import { toRotateOut } from '../../main/ledger/rotation.ts';
import { call, folder, freshLedger, furnish, openOk, person, refusal, setup, wholeLog } from './helpers.ts';

// A busy disk makes these slow, not wrong.
vi.setConfig({ testTimeout: 30_000 });

const DAY_MS = 86_400_000;

describe('a copy', () => {
  test('is one whole file of all that is committed, though the original is open and being written', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    ledger.log.append(wholeLog(set, 3_000));
    const taking = ledger.copies.take();
    for (let seq = 1; seq <= 50; seq += 1) {
      ledger.log.append([call(set, seq, { pad: 'pad-b' })]);
      await new Promise((done) => setImmediate(done));
    }
    const copy = await taking;
    expect(copy.kind).toBe('asked');
    expect(inspect(copy.path, 'full')).toEqual({ kind: 'ours', version: SCHEMA_VERSION });
    expect(readdirSync(join(copy.path, '..'))).toEqual([copy.path.split('/').at(-1)]);
    const database = new Database(copy.path, { readonly: true });
    const { n } = database.prepare<[], { n: number }>('SELECT count(*) AS n FROM events').get() ?? { n: 0 };
    database.close();
    expect(n).toBeGreaterThanOrEqual(3_000);
    expect(ledger.log.lastN()).toBe(3_050);
  });

  test('goes where the user wants it, never over another file', async () => {
    const ledger = await freshLedger();
    furnish(ledger);
    const to = join(folder(), 'mine.db');
    await ledger.copies.takeTo(to);
    expect(inspect(to, 'full').kind).toBe('ours');
    writeFileSync(to, 'letters');
    expect(await refusal(() => ledger.copies.takeTo(to))).toEqual({
      code: 'conflict',
      message: expect.stringContaining(to),
    });
    expect(readFileSync(to, 'utf8')).toBe('letters');
    const nowhere = join(folder(), 'missing', 'mine.db');
    expect(await refusal(() => ledger.copies.takeTo(nowhere))).toEqual({
      code: 'no-folder',
      message: expect.stringContaining(nowhere),
    });
  });

  test('opened by hand in place of the original is not taken for one that was left open', async () => {
    const ledger = await freshLedger();
    furnish(ledger);
    const to = join(folder(), 'plumbline.db');
    await ledger.copies.takeTo(to);
    const other = await openOk(to);
    expect(other.people.list()).toHaveLength(2);
    other.close();
  });

  test('two at once are two copies; one that is cut short by closing leaves nothing', async () => {
    const ledger = await freshLedger();
    furnish(ledger);
    const [one, other] = await Promise.all([ledger.copies.take(), ledger.copies.take()]);
    expect(one.path).not.toBe(other.path);
    const third = refusal(() => ledger.copies.take());
    ledger.close();
    expect((await third).code).toBe('closed');
    expect(readdirSync(join(one.path, '..'))).toHaveLength(2);
  });

  test('of the day is taken once a day', async () => {
    let now = Date.UTC(2026, 10, 25, 12);
    const ledger = await freshLedger({ now: () => now });
    expect((await ledger.copies.daily())?.takenAt).toBe(now);
    now += 3_600_000;
    expect(await ledger.copies.daily()).toBeNull();
    now += DAY_MS;
    expect((await ledger.copies.daily())?.kind).toBe('daily');
    expect(ledger.copies.list()).toHaveLength(2);
  });
});

function copy(takenAt: number, kind: Copy['kind'] = 'daily'): Copy {
  return { path: `${takenAt}`, kind, takenAt, bytes: 1 };
}

describe('rotation', () => {
  test('keeps the last seven days and the last of each of four weeks, and other kinds for ever', () => {
    // Sixty days in a row up to Wednesday 2026-11-25, one copy a day, and an old one of each other kind.
    const last = Date.UTC(2026, 10, 25, 9);
    const days = Array.from({ length: 60 }, (_, index) => copy(last - index * DAY_MS));
    const others = (['asked', 'migration', 'restore'] as const).map((kind) => copy(1, kind));
    const out = new Set(toRotateOut([...others, ...days].reverse(), last));
    expect(others.some((item) => out.has(item))).toBe(false);
    const kept = days.filter((item) => !out.has(item)).map((item) => new Date(item.takenAt).toISOString().slice(5, 10));
    expect(kept).toEqual(['11-25', '11-24', '11-23', '11-22', '11-21', '11-20', '11-19', '11-15', '11-08']);
  });

  test('of days far apart keeps what there is', () => {
    const now = 400 * DAY_MS;
    const copies = Array.from({ length: 7 }, (_, index) => copy(index * 40 * DAY_MS));
    expect(toRotateOut(copies, now)).toEqual([]);
    expect(toRotateOut([copy(1_000), copy(2_000)], now)).toEqual([copy(1_000)]);
    expect(toRotateOut([], now)).toEqual([]);
  });
});

test('copies dated in the future, from a clock that was wrong, push none of the others out', () => {
  const now = Date.UTC(2026, 10, 25);
  const today = Array.from({ length: 5 }, (_, index) => copy(now - index * DAY_MS));
  const wrong = Array.from({ length: 30 }, (_, index) => copy(now + (index + 100) * DAY_MS));
  expect(toRotateOut([...wrong, ...today], now)).toEqual([]);
});

describe('restoring', () => {
  async function twoStates() {
    const path = join(folder(), 'plumbline.db');
    let now = Date.UTC(2026, 10, 1);
    const ledger = await openOk(path, { now: () => now });
    onTestFinished(() => ledger.close());
    const { id: set } = furnish(ledger);
    ledger.log.append(wholeLog(set, 10));
    const copy = await ledger.copies.take();
    now += DAY_MS;
    ledger.people.create(person(3));
    ledger.sets.create(setup(2));
    ledger.log.append([call(set, 1, { pad: 'pad-b' })]);
    return { path, ledger, copy, set };
  }

  test('shows first what both hold, then brings the copy back and keeps what was there', async () => {
    const { path, ledger, copy, set } = await twoStates();
    const then = { people: 2, sheets: 1, sets: 1, events: 10, lastRecordedAt: Date.UTC(2026, 10, 1) };
    const now = { people: 3, sheets: 1, sets: 2, events: 11, lastRecordedAt: Date.UTC(2026, 10, 2) };
    expect(ledger.copies.preview(copy.path)).toEqual({ copy: then, now });
    const { before } = await ledger.copies.restore(copy.path);
    const restored = await openOk(path);
    expect(restored.log.events(set)).toHaveLength(10);
    expect(restored.copies.preview(before.path)).toEqual({ copy: now, now: then });
    await restored.copies.restore(before.path);
    const again = await openOk(path);
    expect(again.log.events(set)).toHaveLength(11);
    again.close();
  });

  test('is refused for a copy that is damaged, or newer, or not on the list; the ledger works on', async () => {
    const { ledger, copy } = await twoStates();
    const bytes = readFileSync(copy.path);
    writeFileSync(copy.path, bytes.subarray(0, bytes.length / 2));
    expect((await refusal(() => ledger.copies.restore(copy.path))).code).toBe('damaged');
    writeFileSync(copy.path, bytes);
    const database = new Database(copy.path);
    database.exec(`PRAGMA user_version = 99; INSERT INTO migrations VALUES (99, 'later', 0)`);
    database.close();
    expect((await refusal(() => ledger.copies.restore(copy.path))).code).toBe('newer');
    expect((await refusal(() => ledger.copies.restore('/etc/hostname'))).code).toBe('unknown-copy');
    expect((await refusal(() => ledger.copies.preview('../plumbline.db'))).code).toBe('unknown-copy');
    expect(ledger.people.list()).toHaveLength(3);
  });

  test('is refused when something is recorded meanwhile: that is in neither copy', async () => {
    const { ledger, copy, set } = await twoStates();
    const restoring = refusal(() => ledger.copies.restore(copy.path));
    const timer = setInterval(() => {
      if (readdirSync(join(copy.path, '..')).length === 1) return;
      ledger.log.append([call(set, ledger.log.lastSeq('pad-c') + 1, { pad: 'pad-c' })]);
    }, 1);
    const told = await restoring;
    clearInterval(timer);
    expect(told).toEqual({ code: 'in-use', message: expect.stringContaining('End the running sets') });
    expect(ledger.log.lastSeq('pad-c')).toBeGreaterThan(0);
    expect(ledger.log.events(set).length).toBe(11 + ledger.log.lastSeq('pad-c'));
  });

  test('waits for the readers: with one open nothing is replaced', async () => {
    const { path, ledger, copy, set } = await twoStates();
    const reader = openReader(path);
    reader.log.events(set);
    expect((await refusal(() => ledger.copies.restore(copy.path))).code).toBe('in-use');
    reader.close();
    const again = await openOk(path);
    expect(again.log.events(set)).toHaveLength(11);
    expect(existsSync(`${path}.restoring`)).toBe(false);
    again.close();
  });
});
