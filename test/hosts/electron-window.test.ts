import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { _electron, type ElectronApplication } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { buildProgram } from '../../main/hosts/desktop.ts';
import { findElectron } from '../../main/hosts/find-electron.ts';
import { plantFolder } from './browser-fixture.ts';

const root = path.resolve(import.meta.dirname, '../..');
const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

/** The installed Electron; nothing is fetched for a test. */
async function installed(): Promise<string | null> {
  const found = await findElectron({
    packageFolder: path.join(root, 'node_modules', 'electron'),
    platform: process.platform,
    environment: process.env,
    isRoot: process.getuid?.() === 0,
    limitMs: 0,
    say: () => {},
  });
  return 'executable' in found ? found.executable : null;
}

test('the real window: isolated, without node, under its policy, bound to its page, with the desk behind it', async (context) => {
  const executablePath = await installed();
  if (executablePath === null) {
    return context.skip(true, 'there is no Electron on this machine, or no display, or the tests run as root');
  }
  mkdirSync(path.join(root, 'dist'), { recursive: true });
  const program = mkdtempSync(path.join(root, 'dist', 'app-test-'));
  ends.push(() => rmSync(program, { recursive: true, force: true }));
  await buildProgram(program, root);
  const { folder, screens } = plantFolder();
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  const data = mkdtempSync(path.join(tmpdir(), 'plumbline-window-'));
  ends.push(() => rmSync(data, { recursive: true, force: true }));
  const args = [program, '--data', data, '--screens', screens];
  const electron: ElectronApplication = await _electron.launch({ executablePath, args });
  ends.push(() => electron.close());

  const page = await electron.firstWindow();
  await page.waitForURL('app://plumbline/');
  expect(await page.evaluate(() => [typeof require, typeof process, typeof module])).toEqual(
    Array(3).fill('undefined'),
  );
  expect(await page.evaluate(() => window.open('https://example.org/'))).toBeNull();
  expect(electron.windows()).toHaveLength(1);
  await page.evaluate(() => {
    location.href = 'https://example.org/';
  });
  expect(page.url()).toBe('app://plumbline/');
  const reached = await page.evaluate(() =>
    fetch('https://example.org/').then(
      () => true,
      () => false,
    ),
  );
  expect(reached).toBe(false);
  const ranInline = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.inlineRan = true';
    document.head.append(script);
    return 'inlineRan' in globalThis;
  });
  expect(ranInline).toBe(false);
  const camera = await page.evaluate(() => navigator.mediaDevices.getUserMedia({ video: true }).catch((e) => e.name));
  expect(camera).toBe('NotAllowedError');
  const gotPort = await page.evaluate(
    () =>
      new Promise((resolve) => {
        window.addEventListener('message', (event) => {
          if (event.data === 'plumbline:desk-port') resolve(event.ports.length);
        });
        window.postMessage('plumbline:desk-port?', location.origin);
      }),
  );
  expect(gotPort).toBe(1);
  expect(existsSync(path.join(data, 'plumbline.db'))).toBe(true);
}, 120_000);
