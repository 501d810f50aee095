import type { AttemptFact, SetFacts } from '../../main/ledger/facts.ts';
import type { Ledger } from '../../main/ledger/ledger.ts';
import type { Verdict } from '../../shared-types/log/events.ts';
import { id, person, setup, sheet, wholeLog } from './helpers.ts';

const HOUR_MS = 3_600_000;

/**
 * Fills a ledger with `sets` sets of `attempts` attempts, an hour apart, of 40 athletes and 8 judges on 3 sheets: logs, facts,
 * reasons and bins. Invented figures, the same every time.
 */
export function fill(ledger: Ledger, sets: number, attempts: number): void {
  for (let number = 1; number <= 48; number += 1) ledger.people.create(person(number));
  for (const name of ['lunge', 'carry', 'step']) ledger.sheets.publish(sheet({ id: name, station: name }));
  for (let number = 0; number < sets; number += 1) {
    const own = setup(number, {
      athlete: id(1 + (number % 40)),
      judge: id(41 + ((number * 7) % 8)),
      sheet: { id: ['lunge', 'carry', 'step'][number % 3] ?? 'lunge', version: 1 },
      loadKg: [4, 6, 9][(number >> 3) % 3] ?? null,
      before: (['fresh', 'run', 'station'] as const)[(number >> 2) % 3] ?? 'fresh',
      tags: number % 10 === 0 ? ['tenth'] : [],
      practice: number % 50 === 0,
      createdAt: number * HOUR_MS,
    });
    ledger.sets.create(own);
    const log = wholeLog(own.id, attempts + 2, `pad-${number}`);
    const outcomes = ledger.log.append(log);
    const appliedN = outcomes.at(-1)?.outcome === 'new' ? (outcomes.at(-1) as { n: number }).n : 0;
    ledger.facts.write(own.id, { ...figures(number, attempts), appliedN, projection: 1 });
  }
}

/** Facts of a finished set in which every (7 + n mod 5)th attempt is a no-rep, for the knee and the stand in turn. */
export function figures(number: number, attempts: number) {
  const rows = Array.from({ length: attempts }, (_, index) => attemptOf(number, index, attempts));
  const noReps = rows.filter((row) => row.verdict === 'no-rep');
  const knee = noReps.filter((row) => row.faults[0] === 'knee');
  const seconds = (of: readonly AttemptFact[]) => of.reduce((sum, row) => sum + (row.costSeconds ?? 0), 0);
  const clockMs = rows.at(-1)?.at ?? 0;
  const facts: SetFacts = {
    phase: 'finished',
    startedAt: number * HOUR_MS + 5_000,
    clockMs,
    attempts,
    counted: attempts - noReps.length,
    cautions: 0,
    noReps: noReps.length,
    unexplained: number % 4 === 0 ? 1 : 0,
    metres: 0,
    reversals: number % 3,
    slips: 0,
    breaks: 0,
    ledger: { startMs: 2_000, workMs: clockMs - 2_000 - noReps.length * 900, noRepMs: noReps.length * 900, breakMs: 0 },
    cleanCycles: attempts - noReps.length,
    cleanMedianMs: 2_000,
    cost: { seconds: seconds(noReps), low: 1, high: 9, repeatSeconds: 1, disruptionSeconds: 1 },
  };
  const reasons = [
    { fault: 'knee', noReps: knee.length, seconds: seconds(knee) },
    { fault: 'tall', noReps: noReps.length - knee.length, seconds: seconds(noReps) - seconds(knee) },
  ];
  return { facts, reasons: reasons.filter((reason) => reason.noReps > 0), attempts: rows };
}

function attemptOf(number: number, index: number, of: number): AttemptFact {
  const every = 7 + (number % 5);
  const noRep = index % every === every - 1;
  const verdict: Verdict = noRep ? 'no-rep' : 'counted';
  return {
    number: index + 1,
    at: (index + 1) * 2_000 + ((number * index) % 400),
    verdict,
    faults: noRep ? [(index + number) % 2 === 0 ? 'knee' : 'tall'] : [],
    cycleMs: 2_000 + ((number * (index + 1)) % 400),
    expectedMs: 2_100,
    clean: !noRep,
    progress: index / of,
    costSeconds: noRep ? 2.5 : null,
  };
}
