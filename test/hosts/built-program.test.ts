import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { buildProgram } from '../../main/hosts/desktop.ts';

const root = path.resolve(import.meta.dirname, '../..');
let target: string;
beforeEach(() => {
  // Below the top folder, so that packages are found from it as they are from dist/app.
  mkdirSync(path.join(root, 'dist'), { recursive: true });
  target = mkdtempSync(path.join(root, 'dist', 'app-test-'));
});
afterEach(() => rmSync(target, { recursive: true, force: true }));

test('compiled for the desktop window, the desk runs as plain JavaScript, its threads too', async () => {
  await buildProgram(target, root);
  const desk = pathToFileURL(path.join(target, 'main', 'desk', 'desk.js')).href;
  const script = path.join(target, 'try.js');
  writeFileSync(
    script,
    `import { openDesk } from ${JSON.stringify(desk)};
     const opened = await openDesk({ ledgerPath: ${JSON.stringify(path.join(target, 'try.db'))}, host: 'electron', demo: false, version: '0' });
     if (!opened.ok) throw new Error(opened.problem.message);
     await opened.desk.settle();
     await opened.desk.close();
     console.log('closed');`,
  );
  const ran = spawnSync(process.execPath, ['--no-strip-types', script], { encoding: 'utf8' });
  expect(ran.stderr).toBe('');
  expect(ran.stdout).toBe('closed\n');
  expect(ran.status).toBe(0);
}, 60_000);
