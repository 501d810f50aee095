import { globSync } from 'node:fs';

/** The source files (TypeScript and JavaScript) in some folders below the top folder, with forward slashes, sorted. */
export function sourceFiles(top: string, folders: readonly string[]): string[] {
  const found = globSync(
    folders.map((folder) => `${folder}/**/*.{ts,tsx,mts,cts,js,jsx,mjs,cjs}`),
    { cwd: top, exclude: (name) => name === 'node_modules' || name === 'dist' },
  );
  return found.map((file) => file.replaceAll('\\', '/')).toSorted();
}
