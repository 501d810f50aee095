// Reads what Vitest wrote of a run (its JSON report, the shape Jest introduced) into a tally.

import { readFileSync } from 'node:fs';

export interface Tally {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  /** Failures that no test stands for, in words: a crash, a file that would not load, an error outside any test. */
  readonly remarks: readonly string[];
}

interface VitestReport {
  readonly success: boolean;
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

export const nothing: Tally = { passed: 0, failed: 0, skipped: 0, remarks: [] };

export function addTallies(a: Tally, b: Tally): Tally {
  return {
    passed: a.passed + b.passed,
    failed: a.failed + b.failed,
    skipped: a.skipped + b.skipped,
    remarks: [...a.remarks, ...b.remarks],
  };
}

/** The tally of a Vitest run from its report and exit code; a run that left no readable report is one failure. */
export function tallyOf(name: string, reportPath: string, exitCode: number): Tally {
  let report: VitestReport;
  try {
    report = JSON.parse(readFileSync(reportPath, 'utf8'));
  } catch {
    return { ...nothing, failed: 1, remarks: [`${name}: Vitest ended with code ${exitCode} and left no results`] };
  }
  let tally = nothing;
  for (const file of report.testResults) {
    const count = (status: string): number => file.assertionResults.filter((test) => test.status === status).length;
    const passed = count('passed');
    const failed = count('failed');
    tally = addTallies(tally, { passed, failed, skipped: file.assertionResults.length - passed - failed, remarks: [] });
    const brokeOutside = file.status === 'failed' && failed === 0;
    if (brokeOutside) tally = addTallies(tally, { ...nothing, failed: 1, remarks: [`${name}: ${file.name} broke`] });
  }
  if (tally.passed + tally.failed + tally.skipped === 0) {
    return { ...nothing, failed: 1, remarks: [`${name}: no test ran`] };
  }
  if (tally.failed === 0 && (exitCode !== 0 || !report.success)) {
    return addTallies(tally, {
      ...nothing,
      failed: 1,
      remarks: [`${name}: every test passed, yet Vitest ended with code ${exitCode}: an error outside the tests`],
    });
  }
  return tally;
}

/** The runner's last line. */
export function closingLine(tally: Tally): string {
  const skipped = tally.skipped > 0 ? `, ${tally.skipped} skipped` : '';
  return `${tally.passed} passed, ${tally.failed} failed${skipped}`;
}
