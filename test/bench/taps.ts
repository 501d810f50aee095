import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import path from 'node:path';
import Database from 'better-sqlite3';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { startProgram } from '../program.ts';
import { type BenchClient, enterProgram } from './client.ts';
import { compare } from './figures.ts';

const TAPS = 1_000;

/** A person who judges and throws, and a set that has begun. */
export async function beginSet(calls: BenchClient['calls']): Promise<string> {
  const [id, person] = [randomUUID(), randomUUID()];
  const now = Date.now();
  await calls.people.save({
    id: person,
    name: 'Bench',
    nickname: '',
    athlete: true,
    judge: true,
    notes: '',
    archivedAt: null,
    createdAt: now,
  });
  await calls.sets.create({
    id,
    athlete: person,
    judge: person,
    sheet: { id: 'wall-throw', version: 1 },
    goal: { kind: 'open' },
    loadKg: 6,
    heightM: 2.7,
    before: 'fresh',
    tags: [],
    note: '',
    role: 'main',
    practice: false,
    createdAt: now,
  });
  await calls.sets.append({ events: [{ set: id, pad: id.slice(0, 8), seq: 1, at: 0, kind: 'go', wallClock: now }] });
  return id;
}

/** Milliseconds from each tap to its acknowledgement, one after the other. */
export async function tapTimes(calls: BenchClient['calls'], set: string, taps: number, first = 2): Promise<number[]> {
  const times: number[] = [];
  for (let seq = first; seq < first + taps; seq += 1) {
    const counted = seq % 12 !== 0;
    const verdict = counted
      ? { verdict: 'counted' as const, faults: [] }
      : { verdict: 'no-rep' as const, faults: ['depth'] };
    const event: SetEvent = { set, pad: set.slice(0, 8), seq, at: seq * 1_000, kind: 'call', ...verdict };
    const start = performance.now();
    const { acknowledgements } = await calls.sets.append({ events: [event] });
    times.push(performance.now() - start);
    if (acknowledgements[0]?.outcome !== 'new') throw new Error('a tap of the bench was not new');
  }
  return times;
}

/** Inserts of one row each, with the ledger's pragmas, into a bare table on the same disk. */
function bareInserts(folder: string, count: number): number[] {
  const file = path.join(folder, 'bare.db');
  const database = new Database(file);
  try {
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.exec('CREATE TABLE taps (n INTEGER PRIMARY KEY, pad TEXT, seq INTEGER, at INTEGER, body TEXT)');
    const insert = database.prepare('INSERT INTO taps (pad, seq, at, body) VALUES (?, ?, ?, ?)');
    const times: number[] = [];
    for (let seq = 0; seq < count; seq += 1) {
      const start = performance.now();
      insert.run('pad', seq, seq * 1_000, '{"faults":["depth"],"verdict":"no-rep"}');
      times.push(performance.now() - start);
    }
    return times;
  } finally {
    database.close();
    for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
  }
}

/** A tap over the real transport to its durable acknowledgement, against a bare insert. Interleaved, in one run. */
export async function tapBench(): Promise<string[]> {
  const program = await startProgram();
  try {
    const client = await enterProgram(program.address);
    const set = await beginSet(client.calls);
    await tapTimes(client.calls, set, 100);
    const [taps, bare]: [number[], number[]] = [[], []];
    const rounds = 10;
    for (let round = 0; round < rounds; round += 1) {
      bare.push(...bareInserts(program.folder, TAPS / rounds));
      taps.push(...(await tapTimes(client.calls, set, TAPS / rounds, 102 + (round * TAPS) / rounds)));
    }
    client.close();
    return compare(
      { what: 'tap to durable acknowledgement over the WebSocket', times: taps },
      { what: 'bare SQLite insert, WAL and FULL, same disk', times: bare },
    );
  } finally {
    await program.stop();
  }
}
