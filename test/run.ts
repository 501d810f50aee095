// `npm test`: types, lint, every Vitest test, the build of the screens and the tests in a browser; one line at the end.
// `npm test -- <words>` runs only the checks and test files whose name contains one of the words.

import { globSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buildRenderer } from '../main/hosts/launch/build-renderer.ts';
import { browserVariable, findOrInstallBrowser } from './browser.ts';
import { type Check, lintChecks, runChecks, typeChecks } from './house/checks.ts';
import { addTallies, closingLine, nothing, type Tally, tallyOf } from './house/report.ts';
import { root, runScript, toolPath } from './house/tools.ts';

const words = process.argv.slice(2).map((word) => word.replace(/^(\.\/)?test\//, ''));
const isWanted = (name: string): boolean => words.length === 0 || words.some((word) => name.includes(word));
const reports = mkdtempSync(path.join(tmpdir(), 'plumbline-test-'));

/** The wanted test files below test/, with forward slashes. */
function testFiles(): string[] {
  const files = globSync('**/*.test.{ts,tsx}', { cwd: path.join(root, 'test') });
  return files.map((file) => file.replaceAll('\\', '/')).filter(isWanted);
}

async function check(checks: readonly Check[]): Promise<Tally> {
  const results = await runChecks(checks);
  const failed = results.filter((result) => result.problems !== '');
  return {
    passed: results.length - failed.length,
    failed: failed.length,
    skipped: 0,
    remarks: failed.map((result) => result.name),
  };
}

async function vitest(project: string, files: readonly string[], limitSeconds: number): Promise<Tally> {
  const report = path.join(reports, `${project}.json`);
  const shown = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const only = words.length === 0 ? [] : files;
  const args = ['run', '--config', 'test/vitest.config.ts', '--project', project, ...shown, ...only];
  const outcome = await runScript(toolPath('vitest', 'vitest'), args, { show: true, limitSeconds });
  return tallyOf(`tests: ${project}`, report, outcome.code);
}

const buildCheck: Check = {
  name: 'build: renderer',
  find: async () => {
    await buildRenderer();
    return '';
  },
};

const browserCheck: Check = {
  name: 'browser: found',
  find: async () => {
    process.env[browserVariable] = await findOrInstallBrowser();
    return '';
  },
};

/** Everything in order; what the browser tests need is prepared only where one of them is wanted. */
async function runAll(): Promise<Tally> {
  const files = testFiles();
  const appFiles = files.filter((file) => file.startsWith('app/'));
  const unitFiles = files.filter((file) => !file.startsWith('app/'));
  let tally = await check([...typeChecks, ...lintChecks].filter((one) => isWanted(one.name)));
  if (unitFiles.length > 0 || words.length === 0) tally = addTallies(tally, await vitest('unit', unitFiles, 600));
  if (appFiles.length > 0 || words.length === 0) {
    tally = addTallies(tally, await check([buildCheck, browserCheck]));
    tally = addTallies(tally, await vitest('app', appFiles, 900));
  }
  return tally;
}

let tally: Tally;
try {
  tally = await runAll();
} catch (error) {
  tally = {
    ...nothing,
    failed: 1,
    remarks: [`the test run broke: ${error instanceof Error ? error.stack : String(error)}`],
  };
} finally {
  rmSync(reports, { recursive: true, force: true });
}
if (tally.passed + tally.failed + tally.skipped === 0) {
  tally = { ...nothing, failed: 1, remarks: [`no check and no test file has a name with ${words.join(' or ')} in it`] };
}
if (tally.remarks.length > 0) console.log(`\nFailed:\n${tally.remarks.map((remark) => `  ${remark}`).join('\n')}`);
console.log(`\n${closingLine(tally)}`);
process.exitCode = tally.failed > 0 ? 1 : 0;
