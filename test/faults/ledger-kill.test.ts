import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { describe, expect, onTestFinished, test } from 'vitest';
import { inspect } from '../../main/ledger/inspect.ts';
import { openLedger } from '../../main/ledger/open.ts';
import { folder, furnish, openOk, refusal } from '../ledger/helpers.ts';

const WRITER = fileURLToPath(new URL('./ledger-writer.ts', import.meta.url));
const KILLS = 25;

function startWriter() {
  return spawn(process.execPath, [WRITER], { stdio: ['pipe', 'pipe', 'inherit'] });
}

type Writer = ReturnType<typeof startWriter>;

/** Lets a writer begin, kills it `afterMs` after it has opened, and returns the last number it had an answer for. */
async function writeUntilKilled(
  child: Writer,
  path: string,
  set: string,
  from: number,
  afterMs: number,
): Promise<number> {
  let said = '';
  let doomed = false;
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
    if (doomed || !said.includes('ready')) return;
    doomed = true;
    setTimeout(() => child.kill('SIGKILL'), afterMs);
  });
  child.stdin.end([path, set, from].join('\n'));
  const [, signal] = await once(child, 'close');
  expect(signal).toBe('SIGKILL');
  const acknowledged = said.match(/^\d+(?= acknowledged\n)/gm);
  return Number(acknowledged?.at(-1) ?? from - 1);
}

/** The numbers at which the writer's batches end, from a start on: 1, 3, 6, 10, 15, 16, 18, … */
function batchEnds(from: number, upTo: number): Set<number> {
  const ends = new Set([from - 1]);
  for (let seq = from, batch = 0; seq <= upTo; batch += 1) {
    seq += 1 + (batch % 5);
    ends.add(seq - 1);
  }
  return ends;
}

describe('a writer that is killed', () => {
  const seed = 20_261_125;
  const delays = fc.sample(fc.double({ min: 0, max: 60, noNaN: true }), { numRuns: KILLS, seed });

  test(`${KILLS} times (seed ${seed}): nothing acknowledged is lost, no batch is there in part, the file is sound`, async () => {
    const path = join(folder(), 'plumbline.db');
    const first = await openOk(path);
    const { id: set } = furnish(first);
    first.close();
    let last = 0;
    // The next one loads while the one before it runs.
    const waiting = [startWriter(), startWriter()];
    onTestFinished(() => waiting.forEach((child) => void child.kill('SIGKILL')));
    for (const delay of delays) {
      waiting.push(startWriter());
      const acknowledged = await writeUntilKilled(waiting.shift() ?? startWriter(), path, set, last + 1, delay);
      // Before anything is repaired by opening: the files as the dead program left them.
      expect(inspect(path, 'full').kind).toBe('ours');
      const ledger = await openOk(path);
      const seqs = ledger.log.events(set).map((event) => event.seq);
      const there = seqs.length;
      expect(seqs).toEqual(Array.from({ length: there }, (_, index) => index + 1));
      expect(there).toBeGreaterThanOrEqual(acknowledged);
      expect(batchEnds(last + 1, there + 1)).toContain(there);
      ledger.close();
      last = there;
    }
    expect(last).toBeGreaterThan(KILLS);
  }, 60_000);

  test('holds the database while it lives, and lets go of it by dying', async () => {
    const path = join(folder(), 'plumbline.db');
    const first = await openOk(path);
    const { id: set } = furnish(first);
    first.close();
    const child = startWriter();
    child.stdin.end([path, set, 1].join('\n'));
    await new Promise<void>((ready) => {
      child.stdout.setEncoding('utf8').on('data', (text: string) => {
        if (text.includes('acknowledged')) ready();
      });
    });
    const told = await refusal(() => openLedger(path, { lockWaitMs: 50 }));
    expect(told).toEqual({ code: 'in-use', message: expect.stringContaining(path) });
    child.kill('SIGKILL');
    await once(child, 'close');
    (await openOk(path)).close();
  }, 20_000);
});
