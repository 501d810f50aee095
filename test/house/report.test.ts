import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { plant } from './plant.ts';
import { addTallies, closingLine, nothing, type Tally, tallyOf } from './report.ts';
import { root, runScript, toolPath } from './tools.ts';

const vitestModule = JSON.stringify(path.join(root, 'node_modules/vitest/dist/index.js'));

/** The tally of a real Vitest run over planted test files. */
async function tallyOfRun(files: Readonly<Record<string, string>>): Promise<Tally> {
  const config = path.join(root, 'node_modules/vitest/dist/config.js');
  const top = plant({
    ...Object.fromEntries(
      Object.entries(files).map(([name, text]) => [name, `import { test, expect } from ${vitestModule};\n${text}`]),
    ),
    'vitest.config.mjs': `import { defineConfig } from ${JSON.stringify(config)};\nexport default defineConfig({});\n`,
  });
  const report = path.join(top, 'report.json');
  const args = ['run', '--root', top, '--reporter=json', `--outputFile=${report}`];
  const outcome = await runScript(toolPath('vitest', 'vitest'), args, { cwd: top });
  return tallyOf('planted', report, outcome.code);
}

describe('the tally of a Vitest run', () => {
  test('counts what passed, failed and was skipped', async () => {
    const text = `test('a', () => {});
test('b', () => expect(1).toBe(2));
test('c', (context) => context.skip('there is none here'));
`;
    expect(await tallyOfRun({ 'a.test.mjs': text })).toEqual({ passed: 1, failed: 1, skipped: 1, remarks: [] });
  });

  test('counts a file that does not load as a failure', async () => {
    const tally = await tallyOfRun({ 'a.test.mjs': `test('a', () => {});`, 'b.test.mjs': `import './missing.mjs';` });
    expect(tally).toMatchObject({ passed: 1, failed: 1 });
    expect(tally.remarks[0]).toMatch(/b\.test\.mjs broke$/);
  });

  test('counts an error outside the tests as a failure', async () => {
    const text = `test('a', () => { Promise.reject(new Error('nobody waits for this')); });`;
    const tally = await tallyOfRun({ 'a.test.mjs': text });
    expect(tally).toMatchObject({ passed: 1, failed: 1 });
    expect(tally.remarks[0]).toContain('an error outside the tests');
  });

  test('counts a test process that dies as a failure', async () => {
    const text = `test('a', () => { process.kill(process.pid, 'SIGKILL'); });`;
    const tally = await tallyOfRun({ 'a.test.mjs': text });
    expect(tally.failed).toBeGreaterThan(0);
  });

  test('counts a run without any test as a failure', async () => {
    const tally = await tallyOfRun({});
    expect(tally).toMatchObject({ passed: 0, failed: 1 });
  });

  test.each([
    ['no report', {}],
    ['half a report', { 'report.json': '{"testResults": [' }],
  ])('counts a run that left %s as a failure', (_name, files) => {
    const tally = tallyOf('planted', path.join(plant(files), 'report.json'), 139);
    expect(tally).toEqual({
      ...nothing,
      failed: 1,
      remarks: ['planted: Vitest ended with code 139 and left no results'],
    });
  });
});

describe('the closing line', () => {
  test('names skipped tests only where there are some', () => {
    expect(closingLine({ passed: 12, failed: 0, skipped: 0, remarks: [] })).toBe('12 passed, 0 failed');
    expect(closingLine({ passed: 12, failed: 1, skipped: 2, remarks: ['a'] })).toBe('12 passed, 1 failed, 2 skipped');
  });

  test('adds up', () => {
    const one: Tally = { passed: 1, failed: 2, skipped: 3, remarks: ['a'] };
    expect(addTallies(one, one)).toEqual({ passed: 2, failed: 4, skipped: 6, remarks: ['a', 'a'] });
  });
});

describe('the one test command', () => {
  const command = path.join(root, 'test', 'run.ts');

  test('runs only what is asked for and ends with the closing line alone', async () => {
    const outcome = await runScript(command, ['house/planted-name-without-a-file', 'types: shared-types']);
    expect(outcome.output.split('\n').at(-1)).toMatch(/^1 passed, 0 failed$|^0 passed, 1 failed$/);
    expect(outcome.output).toContain('types: shared-types');
    expect(outcome.output).not.toContain('types: main');
  });

  test('fails where nothing has the name asked for', async () => {
    const outcome = await runScript(command, ['no-check-is-called-this']);
    expect(outcome.code).toBe(1);
    expect(outcome.output.split('\n').at(-1)).toBe('0 passed, 1 failed');
    expect(outcome.output).toContain('no check and no test file has a name with no-check-is-called-this in it');
  });
});
