import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/websocket';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { DeskClient } from '../../renderer/link/connection.ts';
import { ask, endAll, openSocket, plantFolder } from './browser-fixture.ts';
import { addressOf, cookieAt, type Program, startProgram } from './program.ts';

let data: string;
let screens: string;
const runs: Program[] = [];

beforeEach(() => {
  const planted = plantFolder();
  data = path.join(planted.folder, 'data');
  screens = planted.screens;
});
afterEach(async () => {
  for (const { child, ended } of runs.splice(0)) {
    child.kill('SIGKILL');
    await ended;
  }
  await endAll();
  rmSync(path.dirname(data), { recursive: true, force: true });
});

function start(...args: string[]): Program {
  const program = startProgram(data, screens, args);
  runs.push(program);
  return program;
}

async function clientAt(url: URL): Promise<DeskClient> {
  const socket = await openSocket({ port: Number(url.port), base: url.pathname, cookie: await cookieAt(url) });
  if (typeof socket === 'number') throw new Error(`refused with ${socket}`);
  return createORPCClient(new RPCLink({ websocket: socket as unknown as WebSocket }));
}

test('it prints an address that lets in, serves the desk, and ends in order when told to', async () => {
  const run = start();
  const url = await addressOf(run);
  const client = await clientAt(url);
  expect(await client.desk.about()).toMatchObject({ host: 'browser', demo: false });
  expect((await client.desk.about()).databasePath).toBe(path.join(data, 'plumbline.db'));

  const second = start();
  const again = await addressOf(second);
  expect(await second.ended).toBe(0);
  expect(second.text()).toContain('already running');
  expect(again.port).toBe(url.port);
  expect((await ask({ port: Number(again.port), path: `${again.pathname}${again.search}` })).status).toBe(200);

  run.child.kill('SIGTERM');
  expect(await run.ended).toBe(0);
  expect(existsSync(path.join(data, 'plumbline.db-wal'))).toBe(false);
}, 30_000);

test('the demonstration has a database of its own', async () => {
  mkdirSync(data, { recursive: true });
  // One that does not open is enough to see which one is meant; filling it takes its time.
  writeFileSync(path.join(data, 'demo.db'), 'no database');
  const run = start('--demo');
  expect(await run.ended).toBe(1);
  expect(run.text()).toContain(`The database ${path.join(data, 'demo.db')} is damaged`);
  expect(existsSync(path.join(data, 'plumbline.db'))).toBe(false);
}, 30_000);

test('a damaged database is told with what can be done, left alone, and mended only when asked', async () => {
  mkdirSync(data, { recursive: true });
  const file = path.join(data, 'plumbline.db');
  writeFileSync(file, 'no database');
  const told = start();
  expect(await told.ended).toBe(1);
  expect(told.text()).toMatch(/is damaged[\s\S]*npm start -- --start-empty/);
  expect(readFileSync(file, 'utf8')).toBe('no database');

  const nothing = start('--restore', 'last');
  expect(await nothing.ended).toBe(1);
  expect(nothing.text()).toContain('There is no sound copy to restore.');
  expect(readFileSync(file, 'utf8')).toBe('no database');

  const mended = start('--start-empty');
  expect(await mended.ended).toBe(0);
  const kept = readdirSync(data).filter((name) => name.includes('.damaged-'));
  expect(kept.map((name) => readFileSync(path.join(data, name), 'utf8'))).toEqual(['no database']);

  const refused = start('--start-empty');
  expect(await refused.ended).toBe(1);
  expect(refused.text()).toMatch(/is not damaged.*Nothing was changed/);
}, 40_000);

test('mistakes and a folder that cannot be made end with words and a code, not a stack', async () => {
  const wrong = start('--port', 'x');
  expect(await wrong.ended).toBe(1);
  expect(wrong.text()).toMatch(/^plumbline: --port takes a number/);
  writeFileSync(data, 'a file where the folder should be');
  const blocked = start();
  expect(await blocked.ended).toBe(1);
  expect(blocked.text()).toMatch(/^plumbline: The folder .* cannot be made/);
  expect(blocked.text()).not.toContain('    at ');
}, 30_000);

test('its help names every option and starts nothing', async () => {
  const run = start('--help');
  expect(await run.ended).toBe(0);
  const named = [
    '--browser',
    '--port',
    '--no-open',
    '--data',
    '--demo',
    '--screens',
    '--help',
    '--restore',
    '--start-empty',
  ];
  for (const option of named) expect(run.text()).toContain(option);
  expect(existsSync(data)).toBe(false);
}, 20_000);
