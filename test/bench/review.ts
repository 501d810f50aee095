import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Database from 'better-sqlite3';
import { athleteView } from '../../main/desk/review/athlete.ts';
import { gymView } from '../../main/desk/review/gym.ts';
import { judgeView } from '../../main/desk/review/judge.ts';
import { raceCardOf } from '../../main/desk/review/race-card.ts';
import { subjectsOf } from '../../main/desk/review/subjects.ts';
import type { LedgerReader } from '../../main/ledger/ledger.ts';
import { openReader } from '../../main/ledger/open.ts';
import { startProgram } from '../program.ts';
import { enterProgram } from './client.ts';
import { compare, percentile } from './figures.ts';
import { benchAthlete, benchJudge, fillReview, type ReviewSize } from './review-data.ts';
import { beginSet, tapTimes } from './taps.ts';

const TEN_YEARS: ReviewSize = { sets: 20_000, attempts: 50 };
const DATABASE = 'plumbline.db';
const ROUNDS = 9;
const filter = { athlete: benchAthlete, sheet: 'box-jump-over' };
const goal = { kind: 'reps', reps: 100 } as const;

/** The rows that the gym's view is about, read once and counted: what any report over them has to beat. */
const BARE_SCAN = `SELECT count(*), sum(a.verdict = 'no-rep'), sum(a.cost_s)
  FROM set_facts f JOIN attempts a ON a.set_n = f.set_n
  WHERE f.phase IN ('finished', 'abandoned') AND f.role = 'main' AND f.practice = 0`;
const TABLE_SCAN = `SELECT count(*), sum(verdict = 'no-rep'), sum(cost_s) FROM attempts`;

type Work = (ledger: LedgerReader) => unknown;
const views: readonly (readonly [string, Work])[] = [
  ['gym, everyone', (ledger) => gymView(ledger, { filter: {} })],
  ['one athlete', (ledger) => athleteView(ledger, { filter, rows: 40 })],
  ['one judge', (ledger) => judgeView(ledger, { filter: { judge: benchJudge } })],
  ['race card', (ledger) => raceCardOf(ledger, { filter, goal, wishedMs: null })],
  ['who and what there is', subjectsOf],
];

/** Each view of the Review area over a million attempts against bare scans of the same rows, interleaved in one run. */
function viewTimes(file: string): string[] {
  const database = new Database(file, { readonly: true });
  const ledger = openReader(file);
  try {
    const scans = [TABLE_SCAN, BARE_SCAN].map((sql) => database.prepare(sql));
    const times = new Map<string, number[]>();
    const measure = (what: string, work: () => unknown) => {
      const start = performance.now();
      work();
      times.set(what, [...(times.get(what) ?? []), performance.now() - start]);
    };
    for (let round = 0; round < ROUNDS; round += 1) {
      scans.forEach((scan, index) => {
        measure(index === 0 ? 'table' : 'scan', () => scan.all());
      });
      for (const [what, work] of views) measure(what, () => work(ledger));
    }
    const median = (what: string) => percentile(times.get(what) ?? [], 50);
    const [table, scan] = [median('table'), median('scan')];
    return [
      `bare scan of the table of attempts: ${table.toFixed(0)} ms; of the rows of the view, with its filter: ${scan.toFixed(0)} ms`,
      ...views.map(
        ([what]) =>
          `${what}: ${median(what).toFixed(0)} ms (first ${(times.get(what)?.[0] ?? 0).toFixed(0)} ms), ` +
          `${(median(what) / scan).toFixed(2)} times the scan of its rows, ${(median(what) / table).toFixed(2)} times the table's`,
      ),
    ];
  } finally {
    ledger.close();
    database.close();
  }
}

const TAPS_A_ROUND = 150;
const TAP_ROUNDS = 6;

/** Taps while the gym's view is asked for again and again, against taps in peace, interleaved in one run. */
async function tapsBesideReports(folder: string): Promise<string[]> {
  const program = await startProgram({ folder });
  try {
    await dailyCopy(folder);
    const { calls, close } = await enterProgram(program.address);
    // A set of its own each time: no set in a gym has a thousand reps.
    const tap = async () => tapTimes(calls, await beginSet(calls), TAPS_A_ROUND);
    await tap();
    const [peace, beside]: [number[], number[]] = [[], []];
    let reports = 0;
    for (let round = 0; round < TAP_ROUNDS; round += 1) {
      peace.push(...(await tap()));
      let running = true;
      const reading = (async () => {
        while (running) {
          await calls.review.gym({ filter: {} });
          reports += 1;
        }
      })();
      beside.push(...(await tap()));
      running = false;
      await reading;
    }
    close();
    return [
      ...compare(
        { what: 'taps while the gym’s view is computed', times: beside },
        { what: 'taps in peace', times: peace },
      ),
      `    ${reports} reports of the gym were answered meanwhile`,
    ];
  } finally {
    await program.stop();
  }
}

/** The first copy of the day, read whole in a thread of its own, belongs to neither side of the comparison. */
async function dailyCopy(folder: string): Promise<void> {
  const copies = path.join(folder, `${DATABASE}-copies`);
  for (let waited = 0; waited < 240; waited += 1) {
    const names = existsSync(copies) ? readdirSync(copies) : [];
    if (names.length > 0 && names.every((name) => name.endsWith('.db'))) return;
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
}

/** Fills a database of ten years, then times the views and the taps beside them. */
export async function reviewBench(size: ReviewSize = TEN_YEARS): Promise<string[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'plumbline-review-'));
  const file = path.join(folder, DATABASE);
  try {
    const start = performance.now();
    await fillReview(file, size);
    const filled = (performance.now() - start) / 1_000;
    return [
      `${size.sets} sets of ${size.attempts} attempts, written in ${filled.toFixed(0)} s`,
      ...viewTimes(file),
      ...(await tapsBesideReports(folder)),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
