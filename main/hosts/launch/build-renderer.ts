// Builds the screens into dist/renderer where that is missing or older than its sources.

import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../../..');

/** The built screens: the folder that the hosts serve. */
export const rendererFolder = path.join(root, 'dist', 'renderer');

/** The newest change, in milliseconds since 1970, of a file or of anything below a folder (folders count: a deletion shows). */
export function newestChange(place: string): number {
  const status = statSync(place);
  if (!status.isDirectory()) return status.mtimeMs;
  return readdirSync(place).reduce(
    (newest, name) => Math.max(newest, newestChange(path.join(place, name))),
    status.mtimeMs,
  );
}

/**
 * Whether dist/renderer below a top folder is missing or older than renderer/, shared-types/ or the lock file.
 */
export function rendererIsStale(top: string = root): boolean {
  const page = path.join(top, 'dist', 'renderer', 'index.html');
  if (!existsSync(page)) return true;
  const built = statSync(page).mtimeMs;
  const sources = ['renderer', 'shared-types', 'package-lock.json'].map((name) => path.join(top, name));
  return sources.some((source) => newestChange(source) > built);
}

/**
 * Builds the screens with Vite and puts them in place at once, so that a running host never serves half a build.
 * Rejects with Vite's own message where the sources do not build.
 */
export async function buildRenderer(): Promise<void> {
  const { build } = await import('vite');
  const fresh = `${rendererFolder}.${process.pid}`;
  try {
    await build({
      configFile: path.join(root, 'renderer', 'vite.config.ts'),
      logLevel: 'warn',
      build: { outDir: fresh },
    });
    rmSync(rendererFolder, { recursive: true, force: true });
    renameSync(fresh, rendererFolder);
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
}

/** Builds the screens only if they are stale; true where a build was made. */
export async function buildRendererIfStale(): Promise<boolean> {
  if (!rendererIsStale()) return false;
  await buildRenderer();
  return true;
}
