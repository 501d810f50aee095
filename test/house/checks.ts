// The static checks: each is one line of the report and counts as one test.

import { findForbiddenArrows } from './arrows.ts';
import { findBrokenHabits } from './habits.ts';
import { type Outcome, runScript, toolPath } from './tools.ts';

export interface Check {
  readonly name: string;
  /** What is wrong, in words fit to print; empty where nothing is. Rejects only if the check itself breaks. */
  find(): Promise<string>;
}

export interface CheckResult {
  readonly name: string;
  readonly problems: string;
  readonly seconds: number;
}

function problemsOf(outcome: Outcome): string {
  if (outcome.code === 0) return '';
  return outcome.output || `ended with code ${outcome.code} and said nothing`;
}

function toolCheck(name: string, packageName: string, command: string, args: readonly string[]): Check {
  return { name, find: async () => problemsOf(await runScript(toolPath(packageName, command), args)) };
}

/** The checks of `npm run lint`. */
export const lintChecks: readonly Check[] = [
  toolCheck('lint: format and rules', '@biomejs/biome', 'biome', ['ci', '--colors=off', '--error-on-warnings']),
  toolCheck('lint: promises and types', 'oxlint', 'oxlint', ['--type-aware', '--deny-warnings']),
  toolCheck('lint: unused code', 'knip', 'knip', ['--no-progress']),
  // Without the tests as users: an export that only tests need is marked `@internal`, and says why.
  toolCheck('lint: unused by the program', 'knip', 'knip', ['--no-progress', '--production']),
  { name: 'lint: arrows', find: async () => findForbiddenArrows().join('\n') },
  { name: 'lint: habits', find: async () => findBrokenHabits().join('\n') },
];

/** The type checks; `test` reads all the other folders too, each of the others is checked as it will run. */
export const typeChecks: readonly Check[] = ['shared-types', 'main', 'renderer', 'test'].map((folder) =>
  toolCheck(`types: ${folder}`, 'typescript', 'tsc', ['-p', folder, '--pretty', 'false']),
);

async function runCheck(check: Check): Promise<CheckResult> {
  const begun = performance.now();
  const problems = await check.find().catch((error: unknown) => String(error));
  const seconds = (performance.now() - begun) / 1000;
  const mark = problems === '' ? 'passed' : 'FAILED';
  console.log(`${mark}  ${check.name}  ${seconds.toFixed(1)} s`);
  if (problems !== '') console.log(problems.replace(/^/gm, '    '));
  return { name: check.name, problems, seconds };
}

/** Runs the checks, two at a time, printing each as it ends. */
export async function runChecks(checks: readonly Check[]): Promise<CheckResult[]> {
  const waiting = [...checks];
  const results: CheckResult[] = [];
  const work = async (): Promise<void> => {
    for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) results.push(await runCheck(check));
  };
  await Promise.all([work(), work()]);
  return results;
}
