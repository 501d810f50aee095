import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import * as fc from 'fast-check';
import { beforeAll, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { DamagedLedger } from '../../main/ledger/damaged.ts';
import { LedgerError } from '../../main/ledger/errors.ts';
import { openLedger } from '../../main/ledger/open.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { folder, furnish, openOk, refusal, setup, wholeLog } from '../ledger/helpers.ts';

// A busy disk makes these slow, not wrong.
vi.setConfig({ testTimeout: 30_000 });

const PAGE = 4096;
const sets = [1, 2, 3].map((number) => setup(number));
const logs = new Map<string, SetEvent[]>(sets.map(({ id }, index) => [id, wholeLog(id, 120, `pad-${index}`)]));

/** A closed database with three sets and one copy of all of it; each test works on its own duplicate. */
let original = '';
beforeAll(async () => {
  original = join(mkdtempSync(join(tmpdir(), 'plumbline-damage-')), 'plumbline.db');
  const ledger = await openOk(original);
  furnish(ledger);
  for (const item of sets) ledger.sets.create(item);
  for (const log of logs.values()) ledger.log.append(log);
  await ledger.copies.take();
  ledger.close();
  return () => rmSync(dirname(original), { recursive: true, force: true });
});

function duplicate(withCopies = true): string {
  const path = join(folder(), 'plumbline.db');
  copyFileSync(original, path);
  if (!withCopies) return path;
  mkdirSync(`${path}-copies`);
  for (const name of readdirSync(`${original}-copies`)) {
    copyFileSync(join(`${original}-copies`, name), join(`${path}-copies`, name));
  }
  return path;
}

/** Every file beside the database but the lock, with its bytes. */
function everything(path: string): Map<string, Buffer> {
  const names = readdirSync(dirname(path)).filter((name) => !name.endsWith('-lock') && !name.endsWith('-copies'));
  return new Map(names.sort().map((name) => [name, readFileSync(join(dirname(path), name))]));
}

async function openDamaged(path: string): Promise<DamagedLedger> {
  const opened = await openLedger(path);
  if (opened.state === 'damaged') {
    onTestFinished(() => opened.close());
    return opened;
  }
  opened.ledger.close();
  throw new Error('It was opened as if nothing were wrong.');
}

function overwrite(path: string, from: number, bytes: Buffer): void {
  const file = readFileSync(path);
  bytes.copy(file, from);
  writeFileSync(path, file);
}

const damages: [string, (path: string) => void][] = [
  ['emptied', (path) => truncateSync(path)],
  ['cut in the middle of a page', (path) => truncateSync(path, 3 * PAGE + 100)],
  ['cut by half its pages', (path) => truncateSync(path, Math.floor(readFileSync(path).length / 2 / PAGE) * PAGE)],
  ['cut by its last page', (path) => truncateSync(path, readFileSync(path).length - PAGE)],
  ['overwritten with text', (path) => writeFileSync(path, 'Dear diary,\n'.repeat(2_000))],
  ['without its first page', (path) => overwrite(path, 0, Buffer.alloc(PAGE))],
  ['without its mark', (path) => overwrite(path, 68, Buffer.alloc(4))],
  ['with another version number', (path) => overwrite(path, 60, Buffer.from([0, 0, 0, 77]))],
  ['with a page of zeros in its middle', (path) => overwrite(path, 6 * PAGE, Buffer.alloc(PAGE))],
  ['gone', (path) => rmSync(path)],
];

describe('a damaged database', () => {
  test.each(damages)('%s: told in words, untouched, and the copy brings everything back', async (_what, damage) => {
    const path = duplicate();
    damage(path);
    const before = everything(path);
    const damaged = await openDamaged(path);
    expect(damaged.problems.join()).toMatch(/\w+ \w+/);
    expect(damaged.lastGood).toEqual(damaged.copies[0]);
    expect(everything(path)).toEqual(before);
    const { setAsideTo } = await damaged.restoreCopy(damaged.copies[0]?.path ?? '');
    const old = before.get('plumbline.db');
    expect(existsSync(setAsideTo) ? readFileSync(setAsideTo) : undefined).toEqual(old);
    const ledger = await openOk(path);
    for (const [id, log] of logs) expect(ledger.log.events(id)).toEqual(log);
    ledger.close();
  });

  test('closing the question leaves everything as it is, and asks again', async () => {
    const path = duplicate();
    truncateSync(path, 5 * PAGE);
    const before = everything(path);
    (await openDamaged(path)).close();
    (await openDamaged(path)).close();
    expect(everything(path)).toEqual(before);
  });

  test('beginning anew sets the old one aside; a second damage does not cover it', async () => {
    const path = duplicate(false);
    const asides: string[] = [];
    for (const text of ['one', 'two']) {
      writeFileSync(path, text);
      const damaged = await openDamaged(path);
      expect([damaged.copies, damaged.lastGood]).toEqual([[], null]);
      asides.push(damaged.startEmpty().setAsideTo);
      const ledger = await openOk(path);
      expect(ledger.people.list()).toEqual([]);
      ledger.close();
    }
    expect(asides.map((aside) => readFileSync(aside, 'utf8'))).toEqual(['one', 'two']);
  });

  test('a copy that is damaged too is passed over, and refused', async () => {
    const path = duplicate();
    const good = await openOk(path, { now: () => Date.now() + 86_400_000 });
    const newer = await good.copies.take();
    good.close();
    overwrite(newer.path, 6 * PAGE, Buffer.alloc(PAGE));
    truncateSync(path);
    const damaged = await openDamaged(path);
    expect(damaged.copies[0]?.path).toBe(newer.path);
    expect(damaged.lastGood).toEqual(damaged.copies[1]);
    expect((await refusal(() => damaged.restoreCopy(newer.path))).code).toBe('damaged');
    expect((await refusal(() => damaged.restoreCopy('../../etc/passwd'))).code).toBe('unknown-copy');
    expect(readFileSync(path)).toHaveLength(0);
  });

  test('a flipped bit anywhere is told, or does not touch what was recorded', async () => {
    const bytes = readFileSync(original);
    const path = duplicate(false);
    let told = 0;
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.nat(7), async (place, bit) => {
        const flipped = Buffer.from(bytes);
        flipped.writeUInt8(flipped.readUInt8(place) ^ (1 << bit), place);
        writeFileSync(path, flipped);
        for (const companion of ['-wal', '-shm']) rmSync(path + companion, { force: true });
        try {
          const opened = await openLedger(path);
          if (opened.state === 'damaged') {
            told += 1;
            opened.close();
            expect(readFileSync(path)).toEqual(flipped);
            return;
          }
          try {
            for (const item of sets) expect(opened.ledger.sets.get(item.id)).toEqual(item);
            for (const [id, log] of logs) expect(opened.ledger.log.events(id)).toEqual(log);
          } finally {
            opened.ledger.close();
          }
        } catch (error) {
          if (!(error instanceof LedgerError)) throw error;
          told += 1;
        }
      }),
      { numRuns: 80 },
    );
    expect(told).toBeGreaterThan(0);
  });
});

describe('a database and its -wal', () => {
  /** Appends and never closes, as a killed program does: the files are duplicated while the writer is still open. */
  async function leftOpen(): Promise<string> {
    const place = folder();
    const path = join(place, 'plumbline.db');
    const ledger = await openOk(path);
    onTestFinished(() => ledger.close());
    furnish(ledger);
    for (const item of sets) ledger.sets.create(item);
    for (const log of logs.values()) ledger.log.append(log);
    const taken = join(folder(), 'plumbline.db');
    for (const companion of ['', '-wal']) copyFileSync(path + companion, taken + companion);
    return taken;
  }

  test('copied together, every event is there', async () => {
    const ledger = await openOk(await leftOpen());
    for (const [id, log] of logs) expect(ledger.log.events(id)).toEqual(log);
    ledger.close();
  });

  test('parted, it is told; joined again, everything is there', async () => {
    const path = await leftOpen();
    renameSync(`${path}-wal`, `${path}-hidden`);
    for (const _again of [1, 2]) {
      const damaged = await openDamaged(path);
      expect(damaged.problems.join()).toContain('-wal');
      damaged.close();
    }
    renameSync(`${path}-hidden`, `${path}-wal`);
    const ledger = await openOk(path);
    for (const [id, log] of logs) expect(ledger.log.events(id)).toEqual(log);
    ledger.close();
  });

  test('the database gone and its -wal left: told, and set aside together', async () => {
    const path = await leftOpen();
    rmSync(path);
    const wal = readFileSync(`${path}-wal`);
    const damaged = await openDamaged(path);
    const { setAsideTo } = damaged.startEmpty();
    expect(readFileSync(`${setAsideTo}-wal`)).toEqual(wal);
    (await openOk(path)).close();
  });
});
