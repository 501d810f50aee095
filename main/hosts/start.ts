// `npm start`: the desktop window where Electron is to be had, else the same program in the browser.

import { readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import { runDesktop } from './desktop.ts';
import { findElectron } from './find-electron.ts';
import { buildRendererIfStale, rendererFolder, rendererIsStale } from './launch/build-renderer.ts';
import { help, readOptions, type StartOptions } from './options.ts';
import { makeFolder, placesIn, usualFolder } from './places.ts';

const root = path.resolve(import.meta.dirname, '../..');
const fetchLimitMs = 12_000;

function say(text: string): void {
  console.log(text);
}

async function screensFor(options: StartOptions): Promise<string> {
  if (options.screens !== null) return path.resolve(options.screens);
  if (rendererIsStale()) say('Building the screens …');
  await buildRendererIfStale();
  return rendererFolder;
}

async function run(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (options.help) {
    say(help);
    return 0;
  }
  const folder = options.data ?? usualFolder(process.platform, process.env, homedir());
  const places = placesIn(path.resolve(folder), options.demo);
  makeFolder(places.folder);
  const version = String(JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')).version);
  const screens = (): Promise<string> => screensFor(options);
  if (!options.browser) {
    const electron = await findElectron({
      packageFolder: path.join(root, 'node_modules', 'electron'),
      platform: process.platform,
      environment: process.env,
      isRoot: process.getuid?.() === 0,
      limitMs: fetchLimitMs,
      say,
    });
    if ('executable' in electron) {
      await screens();
      const code = await runDesktop(electron.executable, args, root);
      if (code !== null) return code;
      say('Electron did not start, so Plumbline runs in the browser.');
    } else {
      say(`Plumbline runs in the browser, because ${electron.why}.`);
    }
  }
  // Only here: what is not started need not be loaded.
  const { serve } = await import('./serve.ts');
  return serve({ options, places, screens, version, say });
}

try {
  process.exitCode = await run(process.argv.slice(2));
} catch (error) {
  console.error(`plumbline: ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 1;
}
// Nothing may keep a program that has ended in the process list.
process.exit();
