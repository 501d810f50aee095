import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createRouterClient } from '@orpc/server';
import { onTestFinished } from 'vitest';
import { type Desk, openDesk } from '../../main/desk/desk.ts';
import { athlete, judge } from './fixtures.ts';

/** A desk on a database of its own, closed and removed when the test ends; `calls` are answered without a transport. */
export async function openTestDesk(options: { people?: boolean } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-desk-'));
  const opened = await openDesk({
    ledgerPath: join(folder, 'plumbline.db'),
    host: 'browser',
    demo: false,
    version: '0.0.0',
  });
  if (!opened.ok) throw new Error(opened.problem.message);
  const { desk } = opened;
  onTestFinished(async () => {
    await desk.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const calls = callsOf(desk);
  if (options.people !== false) {
    await calls.people.save(athlete);
    await calls.people.save(judge);
  }
  return { desk, calls, folder };
}

function callsOf(desk: Desk) {
  return createRouterClient(desk.router, { context: {} });
}
