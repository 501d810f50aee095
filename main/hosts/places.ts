import { mkdirSync } from 'node:fs';
import path from 'node:path';

/** Where things lie on this computer. Both hosts use the same ones. */
export interface Places {
  readonly folder: string;
  readonly ledger: string;
  /** What the browser host remembers. */
  readonly remembered: string;
  /** What the pads' way in remembers. */
  readonly pads: string;
  /** The desktop window's own files: its size, its page storage. */
  readonly desktop: string;
}

/**
 * The user's data folder, by the custom of the platform: XDG_DATA_HOME (XDG Base Directory Specification 0.8: a relative
 * one is to be ignored), AppData, Application Support.
 */
export function usualFolder(platform: NodeJS.Platform, environment: NodeJS.ProcessEnv, home: string): string {
  if (platform === 'win32') {
    return path.win32.join(environment.APPDATA || path.win32.join(home, 'AppData', 'Roaming'), 'Plumbline');
  }
  if (platform === 'darwin') return path.posix.join(home, 'Library', 'Application Support', 'Plumbline');
  const asked = environment.XDG_DATA_HOME ?? '';
  return path.posix.join(path.posix.isAbsolute(asked) ? asked : path.posix.join(home, '.local', 'share'), 'Plumbline');
}

/** The demonstration has everything of its own beside the user's. */
export function placesIn(folder: string, demo: boolean): Places {
  return {
    folder,
    ledger: path.join(folder, demo ? 'demo.db' : 'plumbline.db'),
    remembered: path.join(folder, demo ? 'browser-host-demo.json' : 'browser-host.json'),
    pads: path.join(folder, demo ? 'pads-demo.json' : 'pads.json'),
    desktop: path.join(folder, demo ? 'desktop-demo' : 'desktop'),
  };
}

/** Makes the folder, for the user alone. Throws an Error whose message is a sentence that names it. */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    const reason = error instanceof Error && 'code' in error ? ` (${String(error.code)})` : '';
    throw new Error(
      `The folder ${folder} cannot be made${reason}. Make it yourself, or name another one with --data FOLDER.`,
      { cause: error },
    );
  }
}
