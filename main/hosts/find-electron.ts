import { spawn } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';

export type FoundElectron = { readonly executable: string } | { readonly why: string };

export interface ElectronSearch {
  /** node_modules/electron. Never imported outside Electron: that would start a download of its own. */
  readonly packageFolder: string;
  readonly platform: NodeJS.Platform;
  readonly environment: NodeJS.ProcessEnv;
  readonly isRoot: boolean;
  /** How long fetching it may take, milliseconds. */
  readonly limitMs: number;
  readonly say: (sentence: string) => void;
}

/** The Electron to run, fetching it once within the limit where it is missing; else why there is none, in words. */
export async function findElectron(search: ElectronSearch): Promise<FoundElectron> {
  const { platform, environment, packageFolder } = search;
  if (!hasDisplay(platform, environment)) return { why: 'there is no display for a window' };
  if (platform === 'linux' && search.isRoot) {
    return { why: 'Electron keeps its sandbox only for users other than root' };
  }
  const there = electronIn(packageFolder, environment);
  if (there !== null) return { executable: there };
  if (!existsSync(path.join(packageFolder, 'install.js'))) return { why: 'Electron is not installed' };
  search.say('Fetching Electron once …');
  await fetchElectron(packageFolder, environment, search.limitMs);
  const fetched = electronIn(packageFolder, environment);
  return fetched === null
    ? { why: `Electron could not be fetched within ${search.limitMs / 1000} seconds` }
    : { executable: fetched };
}

/** Whether a window can be shown at all. */
export function hasDisplay(platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  return Boolean(environment.DISPLAY || environment.WAYLAND_DISPLAY);
}

/**
 * The executable of an installed Electron, or null; read from the package's own files.
 * @internal exported for its test
 */
export function electronIn(packageFolder: string, environment: NodeJS.ProcessEnv): string | null {
  const name = readText(path.join(packageFolder, 'path.txt'));
  const other = environment.ELECTRON_OVERRIDE_DIST_PATH;
  if (other) return existing(path.join(other, name ?? 'electron'));
  return name === null ? null : existing(path.join(packageFolder, 'dist', name));
}

function existing(file: string): string | null {
  return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null;
}

function readText(file: string): string | null {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    return null;
  }
}

function fetchElectron(packageFolder: string, environment: NodeJS.ProcessEnv, limitMs: number): Promise<void> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['install.js'], {
      cwd: packageFolder,
      env: environment,
      stdio: 'ignore',
      timeout: limitMs,
      killSignal: 'SIGKILL',
    });
    child.once('error', () => resolve());
    child.once('exit', () => resolve());
  });
}
