import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';

/** The built screens, by the path in their address. */
export interface ScreenFiles {
  /** The file under a path such as `assets/main-4f3a.js`, or null. The empty path is the page itself. */
  readonly read: (name: string) => Promise<ScreenFile | null>;
}

export interface ScreenFile {
  readonly body: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly cacheControl: string;
}

const page = 'index.html';
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/**
 * The files below a folder. A name is looked up in the list of files that are there and never becomes part of a path, so
 * no spelling of it reaches anything else; links are not followed.
 */
export function screenFiles(folder: string): ScreenFiles {
  let files = listFiles(folder);
  return {
    read: async (name) => {
      // A new build has other names: the list is read again with each page.
      if (name === '' || name === page) files = listFiles(folder);
      const file = files.get(name === '' ? page : name);
      if (file === undefined) return null;
      const body = await readFile(file).catch(() => null);
      if (body === null) return null;
      return {
        body: Uint8Array.from(body),
        type: types[path.extname(file)] ?? 'application/octet-stream',
        // The build puts a digest of the contents into the names below assets/; the page itself is always fetched.
        cacheControl: name.startsWith('assets/') ? 'private, max-age=31536000, immutable' : 'no-store',
      };
    },
  };
}

function listFiles(folder: string): Map<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    entries.map((entry) => {
      const file = path.join(entry.parentPath, entry.name);
      return [path.relative(folder, file).replaceAll(path.sep, '/'), file];
    }),
  );
}
