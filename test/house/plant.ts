import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** Writes files (by path with forward slashes) into a folder of their own, removed when the test ends; returns it. */
export function plant(files: Readonly<Record<string, string>>): string {
  const top = mkdtempSync(path.join(tmpdir(), 'plumbline-house-'));
  onTestFinished(() => rmSync(top, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) {
    const file = path.join(top, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return top;
}
