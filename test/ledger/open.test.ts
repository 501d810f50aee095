import { chmodSync, chownSync, existsSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { APPLICATION_ID, openReadOnly, openWriter } from '../../main/ledger/connection.ts';
import { logWrites } from '../../main/ledger/log.ts';
import { SCHEMA_VERSION } from '../../main/ledger/migrations/list.ts';
import { openLedger, openReader } from '../../main/ledger/open.ts';
import { folder, freshLedger, furnish, go, openOk, refusal, wholeLog } from './helpers.ts';

describe('a connection', () => {
  test('is durable at every commit and keeps foreign keys, whatever the library was built with', async () => {
    const path = join(folder(), 'plumbline.db');
    (await openOk(path)).close();
    const connection = openWriter(path);
    const pragmas = [
      'journal_mode',
      'synchronous',
      'foreign_keys',
      'recursive_triggers',
      'fullfsync',
      'checkpoint_fullfsync',
    ];
    // After a write as well: NORMAL for WAL, the library's default, only shows then.
    connection.prepare(`INSERT INTO settings VALUES ('a', '1', 0)`).run();
    expect(pragmas.map((name) => connection.pragma(name))).toEqual(['wal', 2, 1, 1, 1, 1]);
    expect([connection.pragma('application_id'), connection.pragma('user_version')]).toEqual([
      APPLICATION_ID,
      SCHEMA_VERSION,
    ]);
    connection.close();
  });

  test('of a reader cannot write', async () => {
    const ledger = await freshLedger();
    const reader = openReadOnly(ledger.path);
    expect((await refusal(() => reader.prepare(`INSERT INTO settings VALUES ('a', '1', 0)`).run())).code).toBe(
      'read-only',
    );
    reader.close();
  });
});

describe('one program at a time', () => {
  test('a second opening is refused in words, also by way of a link, and allowed after closing', async () => {
    const place = folder();
    const path = join(place, 'plumbline.db');
    const ledger = await openOk(path);
    symlinkSync(path, join(place, 'link.db'));
    for (const name of ['plumbline.db', 'link.db']) {
      const told = await refusal(() => openLedger(join(place, name), { lockWaitMs: 20 }));
      expect(told).toEqual({ code: 'in-use', message: expect.stringContaining(path) });
      expect(told.message).toContain('already open in another running Plumbline');
    }
    furnish(ledger);
    ledger.close();
    ledger.close();
    (await openOk(path)).close();
  });

  test('a reader sees what is committed while the writer goes on', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    const reader = openReader(ledger.path);
    expect(reader.log.events(set)).toEqual([]);
    ledger.log.append([go(set)]);
    expect(reader.log.events(set)).toEqual([go(set)]);
    expect(reader.people.list()).toHaveLength(2);
    reader.close();
  });

  test('a closed ledger says so', async () => {
    const ledger = await openOk(join(folder(), 'plumbline.db'));
    const { id: set } = furnish(ledger);
    ledger.close();
    expect((await refusal(() => ledger.log.append([go(set)]))).code).toBe('closed');
    expect((await refusal(() => ledger.people.list())).code).toBe('closed');
  });

  test('leaves nothing but the database and its lock behind', async () => {
    const place = folder();
    const ledger = await openOk(join(place, 'plumbline.db'));
    furnish(ledger);
    ledger.close();
    expect(readdirSync(place).sort()).toEqual(['plumbline.db', 'plumbline.db-lock']);
  });
});

describe('a place where it cannot work is named', () => {
  test('a missing folder, and one that is a file', async () => {
    const place = folder();
    writeFileSync(join(place, 'file'), '');
    for (const inner of ['missing', 'file']) {
      const told = await refusal(() => openLedger(join(place, inner, 'plumbline.db')));
      expect(told).toEqual({ code: 'no-folder', message: expect.stringContaining(join(place, inner)) });
    }
    mkdirSync(join(place, 'plumbline.db'));
    expect((await refusal(() => openLedger(join(place, 'plumbline.db')))).code).toBe('not-a-file');
  });

  test('a folder that may not be written, with and without a database in it', async () => {
    const place = folder();
    const path = join(place, 'plumbline.db');
    (await openOk(path)).close();
    for (const name of ['plumbline.db', 'fresh.db']) {
      const told = await asOrdinaryUser(place, () => refusal(() => openLedger(join(place, name))));
      expect(told).toEqual({ code: 'read-only', message: expect.stringContaining(join(place, name)) });
      expect(told.message).toContain('Give this user the right to write');
    }
    expect(existsSync(join(place, 'fresh.db'))).toBe(false);
  });

  test('a full disk: the batch is not there, nor is any of it, and it works again with room', async () => {
    const path = join(folder(), 'plumbline.db');
    const ledger = await openOk(path);
    const { id: set } = furnish(ledger);
    ledger.log.append([go(set)]);
    ledger.close();
    const connection = openWriter(path);
    const log = logWrites(connection, Date.now);
    connection.pragma(`max_page_count = ${Number(connection.pragma('page_count')) + 1}`);
    const told = await refusal(() => log.append(wholeLog(set, 2_000, 'pad-b')));
    expect(told).toEqual({ code: 'full', message: expect.stringContaining(path) });
    expect(log.events(set)).toEqual([go(set)]);
    connection.pragma('max_page_count = 1000000');
    expect(log.append(wholeLog(set, 2_000, 'pad-b')).every((item) => item.outcome === 'new')).toBe(true);
    connection.close();
  });

  test('a database that another program holds locked', async () => {
    const path = join(folder(), 'plumbline.db');
    (await openOk(path)).close();
    const other = new Database(path);
    other.exec('PRAGMA locking_mode = EXCLUSIVE; BEGIN IMMEDIATE; CREATE TABLE t (a)');
    expect((await refusal(() => openLedger(path))).code).toBe('in-use');
    other.close();
    (await openOk(path)).close();
  }, 20_000);
});

/** Runs `work` as a user without rights in `place`: an administrator may write everywhere, so one has to step down. */
async function asOrdinaryUser<Result>(place: string, work: () => Promise<Result>): Promise<Result> {
  const root = process.getuid?.() === 0;
  chmodSync(place, 0o555);
  if (root) chownSync(place, 0, 0);
  if (root) process.seteuid?.(65_534);
  try {
    return await work();
  } finally {
    if (root) process.seteuid?.(0);
    chmodSync(place, 0o755);
  }
}
