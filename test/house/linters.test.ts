// Plants what the linters must find, under the project's own configuration of them: a rule that is off finds nothing.

import { copyFileSync, readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { plant } from './plant.ts';
import { type Outcome, root, runScript, toolPath } from './tools.ts';

const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));

/** A small project under this one's settings. */
function project(files: Readonly<Record<string, string>>): string {
  const top = plant(files);
  for (const name of ['.biome.json', '.oxlintrc.json', 'tsconfig.json', 'main/tsconfig.json']) {
    plantCopy(top, name);
  }
  symlinkSync(path.join(root, 'node_modules'), path.join(top, 'node_modules'), 'junction');
  return top;
}

function plantCopy(top: string, name: string): void {
  copyFileSync(path.join(root, name), path.join(top, name));
}

function biome(top: string): Promise<Outcome> {
  const args = ['ci', '--colors=off', '--error-on-warnings', '--vcs-enabled=false'];
  return runScript(toolPath('@biomejs/biome', 'biome'), args, { cwd: top });
}

function oxlint(top: string): Promise<Outcome> {
  return runScript(toolPath('oxlint', 'oxlint'), ['--type-aware', '--deny-warnings', 'main'], { cwd: top });
}

const clean = { 'main/desk/first.ts': 'export const first = 1;\n' };

describe('format and rules', () => {
  test('clean code passes', async () => {
    const outcome = await biome(project(clean));
    expect(outcome.output).toContain('No fixes applied');
    expect(outcome.code).toBe(0);
  });

  test.each([
    ['format', 'main/desk/a.ts', 'export const a = "1"\n'],
    ['noExplicitAny', 'main/desk/a.ts', 'export const a: any = 1;\n'],
    ['noNonNullAssertion', 'main/desk/a.ts', 'export const a = (list: number[]): number => list[0]!;\n'],
    ['noBarrelFile', 'shared-types/index.ts', `export { a } from './a.ts';\n`],
    ['noReExportAll', 'shared-types/index.ts', `export * from './a.ts';\n`],
    [
      'useImportExtensions',
      'renderer/a.tsx',
      `import { first } from '../main/desk/first';\n\nexport const a = first;\n`,
    ],
    ['noSkippedTests', 'test/a.test.ts', `import { test } from 'vitest';\n\ntest.skip('a', () => undefined);\n`],
    ['noTsIgnore', 'main/desk/a.ts', '// @ts-ignore\nexport const a: string = 1;\n'],
    ['noEnum', 'main/desk/a.ts', 'export enum A {\n  one = 1,\n}\n'],
    ['noRestrictedGlobals', 'shared-types/a.ts', 'export const a = process.argv;\n'],
    ['noRestrictedGlobals', 'main/analysis/a.ts', 'export const a = performance.now();\n'],
    ['noRestrictedGlobals', 'main/desk/a.ts', `export const a = fetch('https://example.org/');\n`],
    ['noRestrictedGlobals', 'main/ledger/a.ts', `export const a = new WebSocket('wss://example.org/');\n`],
  ])('%s is found in %s', async (rule, file, text) => {
    const outcome = await biome(project({ ...clean, [file]: text }));
    expect(outcome.code).not.toBe(0);
    expect(outcome.output).toContain(rule);
  });
});

describe('promises and cycles', () => {
  test('clean code passes', async () => {
    const outcome = await oxlint(project(clean));
    expect(outcome.output).toContain('0 errors');
    expect(outcome.code).toBe(0);
  });

  test.each([
    ['no-floating-promises', `async function save(): Promise<void> {}\nexport function tap(): void {\n  save();\n}\n`],
    ['no-misused-promises', `export const start = (list: number[]): void => list.forEach(async () => {});\n`],
    ['switch-exhaustiveness-check', `export function a(b: 'x' | 'y'): void {\n  switch (b) {\n    case 'x':\n  }\n}\n`],
    ['no-cycle', `import { b } from './b.ts';\nexport const a = (): number => b();\n`],
  ])('%s is found', async (rule, text) => {
    const other = `import { a } from './a.ts';\nexport const b = (): number => Number(a);\n`;
    const outcome = await oxlint(project({ ...clean, 'main/desk/a.ts': text, 'main/desk/b.ts': other }));
    expect(outcome.code).not.toBe(0);
    expect(outcome.output).toContain(rule);
  });
});

describe('unused code', () => {
  const files = {
    'package.json': JSON.stringify({
      name: 'planted',
      type: 'module',
      dependencies: { zod: manifest.dependencies.zod, idb: manifest.dependencies.idb },
      knip: { entry: ['main/hosts/start.ts!', 'test/run.ts'], project: manifest.knip.project },
    }),
    'main/hosts/start.ts': `import { z } from 'zod';\nimport { used } from '../desk/used.ts';\nconsole.log(z, used);\n`,
    'main/desk/used.ts': 'export const used = 1;\nexport const spare = 2;\nexport const tried = 3;\n',
    'main/desk/forgotten.ts': 'export const forgotten = 1;\n',
    'test/run.ts': `import { tried } from '../main/desk/used.ts';\nconsole.log(tried);\n`,
  };

  test('an unused file, export and dependency are found; what a test uses is used', async () => {
    const outcome = await runScript(toolPath('knip', 'knip'), ['--no-progress', '--directory', project(files)]);
    expect(outcome.code).not.toBe(0);
    for (const unused of ['main/desk/forgotten.ts', 'spare', 'idb']) expect(outcome.output).toContain(unused);
    for (const used of ['tried', 'zod']) expect(outcome.output).not.toContain(used);
  });

  test('what only a test uses is unused by the program', async () => {
    const args = ['--no-progress', '--production', '--directory', project(files)];
    const outcome = await runScript(toolPath('knip', 'knip'), args);
    expect(outcome.code).not.toBe(0);
    expect(outcome.output).toContain('tried');
  });
});
