import { spawn } from 'node:child_process';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { problemCode } from './exit-code.ts';
import { buildMain } from './launch/build-main.ts';
import { newestChange } from './launch/build-renderer.ts';

/** An Electron that ends by itself within this time with a code of its own has not started, milliseconds. */
const startMs = 6_000;

/**
 * Runs the desktop window until it is closed; answers the exit code, or null where Electron itself did not start (on some
 * Linux systems its sandbox is not allowed). The main process is run as plain JavaScript, as it is when packaged.
 */
export async function runDesktop(executable: string, args: readonly string[], root: string): Promise<number | null> {
  const built = path.join(root, 'dist', 'app');
  if (isStale(path.join(built, 'package.json'), root)) await buildProgram(built, root);
  const begun = performance.now();
  const { code, told } = await started(executable, [built, ...args]);
  const early = performance.now() - begun < startMs;
  if (early && !told && code !== 0 && code !== problemCode) return null;
  return code ?? 1;
}

/**
 * The compiled main process as an application of Electron's: a folder with a manifest.
 * @internal exported for the tests, which run what it builds
 */
export async function buildProgram(target: string, root: string): Promise<void> {
  await buildMain(target);
  const { name, version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  const manifest = { name, version, type: 'module', main: 'main/hosts/electron.js' };
  writeFileSync(path.join(target, 'package.json'), JSON.stringify(manifest));
}

function isStale(last: string, root: string): boolean {
  if (!existsSync(last)) return true;
  const built = statSync(last).mtimeMs;
  const sources = ['main', 'shared-types', 'package.json', 'package-lock.json'].map((name) => path.join(root, name));
  return sources.some((source) => newestChange(source) > built);
}

/** How it ended, and whether it had been told to: `code` is null where a signal ended it. */
function started(executable: string, args: readonly string[]): Promise<{ code: number | null; told: boolean }> {
  const environment = { ...process.env };
  // With it Electron would be a plain Node, without a window.
  delete environment.ELECTRON_RUN_AS_NODE;
  return new Promise((resolve) => {
    const child = spawn(executable, args, { stdio: 'inherit', env: environment });
    let told = false;
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.on(signal, () => {
        told = true;
        // A terminal's Ctrl-C reaches the child by itself.
        if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal);
      });
    }
    child.once('error', () => resolve({ code: 127, told }));
    child.once('exit', (code) => resolve({ code, told }));
  });
}
