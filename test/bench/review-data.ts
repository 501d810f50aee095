import { type RandomGenerator, seededGenerator } from '../../main/analysis/random/generator.ts';
import { randomNormal } from '../../main/analysis/random/variates.ts';
import { PROJECTION } from '../../main/desk/reports/set-facts.ts';
import { openWriter } from '../../main/ledger/connection.ts';
import { type FactsOfSet, factWrites } from '../../main/ledger/fact-writer.ts';
import type { AttemptFact } from '../../main/ledger/facts.ts';
import { logWrites } from '../../main/ledger/log.ts';
import { openLedger } from '../../main/ledger/open.ts';
import { setWrites } from '../../main/ledger/sets.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { SetSetup } from '../../shared-types/log/setup.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';

const DAY_MS = 86_400_000;
const FIRST_DAY = Date.UTC(2016, 8, 1, 17);
const ATHLETES = 40;
const JUDGES = 8;
const SETS_A_TRANSACTION = 500;

export interface ReviewSize {
  readonly sets: number;
  readonly attempts: number;
}

/** An id for the number: the same number gives the same id. */
function idOf(number: number): string {
  return `00000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`;
}

export const benchAthlete = idOf(1);
export const benchJudge = idOf(ATHLETES + 1);

/**
 * Makes the database of a gym of ten years at `path`: 40 athletes, 8 judges, the three stations, `sets` sets of `attempts`
 * attempts, with logs, facts, reasons and bins, by the ledger's own writers. Invented, the same every time; no-reps grow rarer
 * over the years, commoner through a set and with haste. Not durable while it is made: a kill leaves a broken file.
 */
export async function fillReview(path: string, { sets, attempts }: ReviewSize): Promise<void> {
  const opened = await openLedger(path);
  if (opened.state !== 'open') throw new Error('The database of the bench is damaged.');
  const { ledger } = opened;
  for (let number = 1; number <= ATHLETES + JUDGES; number += 1) {
    const athlete = number <= ATHLETES;
    ledger.people.create({
      id: idOf(number),
      name: `${athlete ? 'Athlete' : 'Judge'} ${number}`,
      nickname: '',
      athlete,
      judge: !athlete,
      notes: '',
      archivedAt: null,
      createdAt: FIRST_DAY,
    });
  }
  ledger.sheets.seed(shippedSheets);
  ledger.close();
  const connection = openWriter(path);
  connection.pragma('synchronous = OFF');
  const writes = { sets: setWrites(connection), log: logWrites(connection, Date.now), facts: factWrites(connection) };
  const generator = seededGenerator(20_160_901);
  for (let first = 0; first < sets; first += SETS_A_TRANSACTION) {
    connection.transaction(() => {
      for (let number = first; number < Math.min(sets, first + SETS_A_TRANSACTION); number += 1) {
        const setup = setupOf(number, sets, attempts);
        const rows = attemptsOf(number / sets, attempts, faultsOf(setup), generator);
        writes.sets.create(setup);
        const outcomes = writes.log.append(logOf(setup, rows));
        const last = outcomes.at(-1);
        const appliedN = last?.outcome === 'new' ? last.n : 0;
        writes.facts.write(setup.id, factsFor(setup, rows, appliedN));
      }
    });
  }
  connection.close();
}

function setupOf(number: number, sets: number, attempts: number): SetSetup {
  const sheet = shippedSheets[number % 3 === 2 ? Math.floor(number / 3) % 2 : 2] ?? shippedSheets[0];
  if (sheet === undefined) throw new Error('No sheet ships.');
  return {
    id: idOf(0x1000_0000 + number),
    athlete: idOf(1 + (number % ATHLETES)),
    judge: idOf(ATHLETES + 1 + ((number * 7 + Math.floor(number / 40)) % JUDGES)),
    sheet: { id: sheet.id, version: sheet.version },
    goal: { kind: 'reps', reps: attempts },
    loadKg: sheet.loadsKg[Math.floor(number / 120) % Math.max(1, sheet.loadsKg.length)] ?? null,
    heightM: sheet.heightsM[0] ?? null,
    before: (['fresh', 'run', 'station'] as const)[Math.floor(number / 40) % 3] ?? 'fresh',
    tags: number % 10 === 0 ? ['heat'] : [],
    note: '',
    role: 'main',
    practice: number % 50 === 49,
    createdAt: Math.round(FIRST_DAY + (number / sets) * 3_650 * DAY_MS),
  };
}

function faultsOf(setup: SetSetup): string[] {
  return (shippedSheets.find((sheet) => sheet.id === setup.sheet.id)?.faults ?? []).map((fault) => fault.code);
}

function attemptsOf(year: number, count: number, faults: readonly string[], generator: RandomGenerator): AttemptFact[] {
  const form = 0.3 * randomNormal(generator);
  let at = 1_500;
  let lost = false;
  return Array.from({ length: count }, (_, index): AttemptFact => {
    const progress = index / count;
    const expectedMs = Math.round(2_000 * (1 + 0.15 * progress));
    const pace = 1 + 0.08 * randomNormal(generator);
    const cycleMs = Math.max(600, Math.round(expectedMs * pace) + (lost ? 900 : 0));
    const logOdds = -2.3 - 0.8 * year + 0.6 * progress + 3 * (1 - pace) + form;
    const noRep = generator.uniform() < 1 / (1 + Math.exp(-logOdds));
    const fault = faults[Math.floor(generator.uniform() ** 2 * faults.length)];
    const clean = !noRep && !lost && index > 0;
    lost = noRep;
    at += cycleMs;
    return {
      number: index + 1,
      at,
      verdict: noRep ? 'no-rep' : 'counted',
      faults: noRep && fault !== undefined && generator.uniform() < 0.95 ? [fault] : [],
      cycleMs,
      expectedMs,
      clean,
      progress,
      costSeconds: noRep ? (cycleMs + 900) / 1_000 : null,
    };
  });
}

function logOf(setup: SetSetup, rows: readonly AttemptFact[]): SetEvent[] {
  const head = { set: setup.id, pad: `pad-${setup.id.slice(-8)}` };
  const last = rows.at(-1)?.at ?? 0;
  return [
    { ...head, seq: 1, at: 0, kind: 'go', wallClock: setup.createdAt },
    ...rows.map(
      (row): SetEvent => ({
        ...head,
        seq: row.number + 1,
        at: row.at,
        kind: 'call',
        verdict: row.verdict,
        faults: [...row.faults],
      }),
    ),
    { ...head, seq: rows.length + 2, at: last, kind: 'finish' },
  ];
}

function factsFor(setup: SetSetup, attempts: readonly AttemptFact[], appliedN: number): FactsOfSet {
  const noReps = attempts.filter((row) => row.verdict === 'no-rep');
  const seconds = (rows: readonly AttemptFact[]) => rows.reduce((sum, row) => sum + (row.costSeconds ?? 0), 0);
  const clockMs = attempts.at(-1)?.at ?? 0;
  const cost = seconds(noReps);
  const noRepMs = Math.round(cost * 1_000);
  return {
    facts: {
      phase: 'finished',
      startedAt: setup.createdAt,
      clockMs,
      attempts: attempts.length,
      counted: attempts.length - noReps.length,
      cautions: 0,
      noReps: noReps.length,
      unexplained: noReps.filter((row) => row.faults.length === 0).length,
      metres: 0,
      reversals: noReps.length % 3 === 2 ? 1 : 0,
      slips: 0,
      breaks: 0,
      ledger: { startMs: 1_500, workMs: clockMs - 1_500 - noRepMs, noRepMs, breakMs: 0 },
      cleanCycles: attempts.filter((row) => row.clean).length,
      cleanMedianMs: 2_150,
      cost: { seconds: cost, low: cost * 0.9, high: cost * 1.1, repeatSeconds: cost / 2, disruptionSeconds: cost / 2 },
    },
    reasons: [...Map.groupBy(noReps, (row) => row.faults[0] ?? '')].map(([fault, rows]) => ({
      fault,
      noReps: rows.length,
      seconds: seconds(rows),
    })),
    attempts,
    appliedN,
    projection: PROJECTION,
  };
}
