// Finds a browser of the Chromium family for the tests, or gets one; where none can be had it fails in a sentence.
//
// In order: the one named in the environment; an installed Chromium, Chrome or Edge; Playwright's own; as root on Debian
// and its kin, the distribution's package, which is installed then.

import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { type Browser, chromium } from 'playwright-core';

const start = promisify(execFile);

/** The environment variable that names the browser's executable. */
export const browserVariable = 'PLUMBLINE_BROWSER';

const launchArguments = [
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function searchPath(names: readonly string[]): string[] {
  const folders = (process.env.PATH ?? '').split(path.delimiter).filter((folder) => folder !== '');
  return names.flatMap((name) => folders.map((folder) => path.join(folder, name)));
}

/** Where browsers of the Chromium family usually are on this platform, likeliest first. */
export function usualPlaces(platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): string[] {
  if (platform === 'darwin') {
    const names = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
    const folders = ['/Applications', path.join(homedir(), 'Applications')];
    return names.flatMap((name) => folders.map((folder) => `${folder}/${name}.app/Contents/MacOS/${name}`));
  }
  if (platform === 'win32') {
    const folders = [environment.ProgramFiles, environment['ProgramFiles(x86)'], environment.LOCALAPPDATA];
    const names = ['Chromium/Application/chrome.exe', 'Google/Chrome/Application/chrome.exe'];
    names.push('Microsoft/Edge/Application/msedge.exe');
    return names.flatMap((name) => folders.flatMap((folder) => (folder ? [path.win32.join(folder, name)] : [])));
  }
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
  const places = [...searchPath(names), ...names.map((name) => `/usr/bin/${name}`)];
  return [...places, '/snap/bin/chromium', '/opt/google/chrome/chrome', '/opt/microsoft/msedge/msedge'];
}

/** Whether a candidate answers; a distribution may leave a stub that only says where to get the browser. */
async function answers(executable: string): Promise<boolean> {
  if (!existsSync(executable)) return false;
  // Elsewhere than on Linux an installed browser opens a window instead of telling its version.
  if (process.platform !== 'linux') return true;
  return start(executable, ['--version'], { timeout: 30_000 }).then(
    () => true,
    () => false,
  );
}

async function findBrowser(): Promise<string | undefined> {
  const named = process.env[browserVariable];
  if (named !== undefined) {
    if (await answers(named)) return named;
    throw new Error(`${browserVariable} names ${named}, which does not start as a browser.`);
  }
  for (const place of [...usualPlaces(process.platform, process.env), chromium.executablePath()]) {
    if (await answers(place)) return place;
  }
  return undefined;
}

/** Installs Debian's package; resolves to what went wrong, empty where nothing did. */
async function installDebianPackage(): Promise<string> {
  const options = { timeout: 420_000, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  try {
    await start('apt-get', ['update'], options);
    await start('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], options);
    return '';
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** The path of a browser's executable, installing one where the machine allows it; rejects with a sentence otherwise. */
export async function findOrInstallBrowser(): Promise<string> {
  const found = await findBrowser();
  if (found !== undefined) return found;
  const mayInstall = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  const trouble = mayInstall ? await installDebianPackage() : '';
  const installed = mayInstall ? await findBrowser() : undefined;
  if (installed !== undefined) return installed;
  throw new Error(
    'No browser for the tests: install Chromium, Chrome or Edge, or run "npx playwright-core install chromium", ' +
      `or name an executable in ${browserVariable}.${trouble === '' ? '' : ` Installing the package failed: ${trouble}`}`,
  );
}

/** Starts a browser without a window. Close it in a `finally` or an `afterAll`: a browser left open hangs the run. */
export async function openBrowser(extraArguments: readonly string[] = []): Promise<Browser> {
  const executablePath = await findOrInstallBrowser();
  return chromium.launch({ executablePath, args: [...launchArguments, ...extraArguments] });
}
