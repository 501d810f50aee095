import { rmSync, utimesSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { rendererIsStale } from '../../main/hosts/launch/build-renderer.ts';
import { plant } from './plant.ts';

const sources = ['renderer/areas/judge/judge.tsx', 'renderer/index.html', 'shared-types/fold.ts', 'package-lock.json'];
const folders = ['renderer/areas/judge', 'renderer/areas', 'renderer', 'shared-types'];
const page = 'dist/renderer/index.html';

/** A project whose sources were last changed at second 1000 and whose screens were built at second 2000. */
function built(): string {
  const top = plant(Object.fromEntries([...sources, page].map((name) => [name, ''])));
  for (const name of [...sources, ...folders]) utimesSync(path.join(top, name), 1000, 1000);
  utimesSync(path.join(top, page), 2000, 2000);
  return top;
}

describe('the built screens', () => {
  test('are fresh where no source is newer', () => {
    expect(rendererIsStale(built())).toBe(false);
  });

  test('are stale where there are none', () => {
    const top = built();
    rmSync(path.join(top, 'dist'), { recursive: true });
    expect(rendererIsStale(top)).toBe(true);
  });

  test.each(sources)('are stale where %s is newer', (name) => {
    const top = built();
    utimesSync(path.join(top, name), 2001, 2001);
    expect(rendererIsStale(top)).toBe(true);
  });

  test('are stale where a source was taken away', () => {
    const top = built();
    rmSync(path.join(top, 'renderer/areas/judge/judge.tsx'));
    expect(rendererIsStale(top)).toBe(true);
  });
});
