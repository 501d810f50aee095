// Writes main/ and shared-types/ as JavaScript for the packaged program, in the same folders below another top.
//
// Electron strips types by itself, so this is caution, not need: what is shipped then depends neither on that nor on
// how it meets the archive the program is packed in.

import { execFile } from 'node:child_process';
import { cpSync, globSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';

const root = path.resolve(import.meta.dirname, '../../..');

/** The compiler rewrites the names in imports; a worker's name in `new URL('./x.ts', import.meta.url)` it leaves. */
const sourceUrl = /(new URL\(\s*['"]\.{1,2}\/[^'"]+)\.ts(['"],\s*import\.meta\.url)/g;

/**
 * Compiles the main process into `target` (main/… and shared-types/… below it), replacing what was there. Rejects with
 * the compiler's words where the types do not hold.
 */
export async function buildMain(target: string): Promise<void> {
  rmSync(target, { recursive: true, force: true });
  const compiler = path.join(root, 'node_modules', 'typescript', 'bin', 'tsc');
  const places = ['-p', path.join(root, 'main'), '--rootDir', root, '--outDir', target];
  const how = ['--noEmit', 'false', '--rewriteRelativeImportExtensions', 'true', '--pretty', 'false'];
  try {
    await promisify(execFile)(process.execPath, [compiler, ...places, ...how]);
  } catch (error) {
    const words = error instanceof Error && 'stdout' in error ? String(error.stdout) : String(error);
    throw new Error(`the main process does not compile:\n${words}`, { cause: error });
  }
  for (const script of globSync('main/**/*.cjs', { cwd: root })) {
    cpSync(path.join(root, script), path.join(target, script));
  }
  for (const name of globSync('**/*.js', { cwd: target })) {
    const file = path.join(target, name);
    const text = readFileSync(file, 'utf8');
    const renamed = text.replace(sourceUrl, '$1.js$2');
    if (renamed !== text) writeFileSync(file, renamed);
  }
}
