import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { openWriter } from '../../main/ledger/connection.ts';
import { LedgerError } from '../../main/ledger/errors.ts';
import { inspect } from '../../main/ledger/inspect.ts';
import { type MigrateOptions, migrate } from '../../main/ledger/migrate.ts';
import { migrations, SCHEMA_VERSION } from '../../main/ledger/migrations/list.ts';
import { openLedger } from '../../main/ledger/open.ts';
import { folder, openOk, refusal, setup } from './helpers.ts';

const frozen = join(import.meta.dirname, 'schemas');
const versions = Array.from({ length: SCHEMA_VERSION }, (_, index) => index + 1);

/** The database that the frozen text of a version describes, in a folder of its own. */
function thaw(version: number): string {
  const path = join(folder(), 'plumbline.db');
  const database = new Database(path);
  database.exec(readFileSync(join(frozen, `version-${version}.sql`), 'utf8'));
  database.close();
  return path;
}

/** Every row of every table and the schema itself, as text. */
function contents(path: string): string {
  const database = new Database(path, { readonly: true });
  const schema = database.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY type, name').all();
  const tables = (schema as { type: string; name: string }[]).filter((item) => item.type === 'table');
  const rows = tables.map(({ name }) => [name, database.prepare(`SELECT * FROM "${name}"`).all()]);
  const marks = ['application_id', 'user_version'].map((name) => database.pragma(name, { simple: true }));
  database.close();
  return JSON.stringify({ schema, rows, marks });
}

describe('the steps of the schema', () => {
  test('are numbered from 1 without a gap, and every version is frozen', () => {
    expect(migrations.map((migration) => migration.version)).toEqual(versions);
    expect(readdirSync(frozen).sort()).toEqual(versions.map((version) => `version-${version}.sql`));
  });

  test.each(versions)('version %i as it was frozen is what its steps still make', (version) => {
    const made = join(folder(), 'made.db');
    const connection = openWriter(made);
    migrate(connection, 0, { migrations: migrations.slice(0, version) });
    connection.close();
    const schema = (path: string) => {
      const database = new Database(path, { readonly: true });
      const rows = database
        .prepare("SELECT name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY name")
        .all();
      database.close();
      return rows.map((row) => JSON.stringify(row).replace(/(\\n|\s)+/g, ' '));
    };
    expect(schema(thaw(version))).toEqual(schema(made));
  });

  test.each(versions)('version %i opens with all its records, sound to the last check', async (version) => {
    const path = thaw(version);
    const ledger = await openOk(path);
    expect(ledger.people.list({ archived: 'also' }).map((row) => row.name)).toEqual(['Ada Lind', "Bo 'Zoë' Marsh"]);
    expect(ledger.sheets.latest()[0]?.version).toBe(2);
    expect(ledger.log.events(setup(1).id)).toHaveLength(13);
    expect(ledger.log.events(setup(2).id)).toHaveLength(3);
    const page = ledger.sets.list({ limit: 10 });
    expect(page.rows.map((row) => row.setup.id).sort()).toEqual([setup(1).id, setup(2).id]);
    expect(ledger.sets.list({ limit: 10, filter: { tags: ['heat'], search: 'after addie' } }).total).toBe(1);
    expect(ledger.facts.stale(1, 9).map((row) => row.lastN)).toEqual([13, 16]);
    expect(ledger.settings.get('theme')).toEqual({ hall: true });
    expect(ledger.copies.list().map((copy) => copy.kind)).toEqual(version < SCHEMA_VERSION ? ['migration'] : []);
    ledger.close();
    expect(inspect(path, 'full')).toEqual({ kind: 'ours', version: SCHEMA_VERSION });
  });

  test('the copy taken before is the old database, readable by the old program', async () => {
    const path = thaw(1);
    const before = contents(path);
    const ledger = await openOk(path);
    const [copy] = ledger.copies.list();
    ledger.close();
    expect(copy && contents(copy.path)).toBe(before);
  });
});

describe('a migration that is interrupted', () => {
  /** Runs `attempt` until it works, interrupted a statement later every time; `look` sees what each interruption leaves. */
  async function interruptEverywhere(attempt: (options: MigrateOptions) => unknown, look: () => void): Promise<number> {
    for (let at = 0; ; at += 1) {
      let statements = 0;
      const beforeStatement = () => {
        if (statements === at) throw new Error('the power failed');
        statements += 1;
      };
      try {
        await attempt({ beforeStatement });
        return at;
      } catch (error) {
        expect(error).toBeInstanceOf(LedgerError);
        expect(error).toMatchObject({ code: 'migration-failed', message: expect.stringContaining('unchanged') });
        look();
      }
    }
  }

  test.each(versions.slice(0, -1))('from version %i, at every statement, leaves it as it was', async (version) => {
    const path = thaw(version);
    const before = contents(path);
    const attempt = (options: MigrateOptions) => {
      const connection = openWriter(path);
      try {
        migrate(connection, 0, options);
      } finally {
        connection.close();
      }
    };
    const pending = migrations.slice(version).flatMap((migration) => migration.statements).length;
    const interrupted = await interruptEverywhere(attempt, () => expect(contents(path)).toBe(before));
    // Each step also writes its record and its number, and the check comes last.
    expect(interrupted).toBe(pending + 2 * (SCHEMA_VERSION - version) + 1);
    expect(inspect(path, 'full')).toEqual({ kind: 'ours', version: SCHEMA_VERSION });
  });

  test('leaves the database free to be opened again, and its copy in place', async () => {
    const path = thaw(1);
    const before = contents(path);
    const beforeStatement = () => {
      throw new Error('the power failed');
    };
    expect((await refusal(() => openLedger(path, { beforeStatement }))).code).toBe('migration-failed');
    expect(contents(path)).toBe(before);
    const ledger = await openOk(path);
    expect(ledger.copies.list().map((copy) => copy.kind)).toEqual(['migration', 'migration']);
    ledger.close();
  });

  test('at the making of a new database leaves no database', async () => {
    const path = join(folder(), 'plumbline.db');
    const attempt = async (options: MigrateOptions) => {
      const opened = await openLedger(path, options);
      if (opened.state === 'open') opened.ledger.close();
    };
    const interrupted = await interruptEverywhere(attempt, () => {
      expect(readdirSync(join(path, '..')).filter((name) => name !== 'plumbline.db-lock')).toEqual([]);
    });
    expect(interrupted).toBeGreaterThan(30);
  });
});

describe('a database of another version or another program', () => {
  test('a newer one is refused in words and left alone', async () => {
    const path = thaw(SCHEMA_VERSION);
    const database = new Database(path);
    database.exec(`PRAGMA user_version = ${SCHEMA_VERSION + 1};
      INSERT INTO migrations VALUES (${SCHEMA_VERSION + 1}, 'later', 0);
      CREATE TABLE later (n INTEGER PRIMARY KEY)`);
    database.close();
    const before = contents(path);
    const told = await refusal(() => openLedger(path));
    expect(told.code).toBe('newer');
    expect(told.message).toContain(path);
    expect(told.message).toContain('Install that version');
    expect(contents(path)).toBe(before);
  });

  test.each([0, 0x12345678])('one with application id %i is not ours', async (mark) => {
    const path = join(folder(), 'other.db');
    const database = new Database(path);
    database.exec(`PRAGMA application_id = ${mark}; CREATE TABLE t (a); INSERT INTO t VALUES (1)`);
    database.close();
    const before = readFileSync(path);
    expect((await refusal(() => openLedger(path))).code).toBe('not-ours');
    expect(readFileSync(path)).toEqual(before);
  });
});
