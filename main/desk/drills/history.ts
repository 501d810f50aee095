import type { JudgeDrills, ReadyLine } from '../../../shared-types/contract/drills.ts';
import type { Drill } from '../../../shared-types/drills/drill.ts';
import { boundsFor, type ReadyCriteria, type ReadyVerdict, readyFor } from '../../../shared-types/drills/ready.ts';
import { calledName } from '../../../shared-types/people.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { countsOf } from '../../analysis/drills/answers.ts';
import { detectionScore } from '../../analysis/drills/detection-score.ts';
import { type FaultNamed, faultScore } from '../../analysis/drills/fault-score.ts';
import { answered, type JudgedTrial } from '../../analysis/drills/outcomes.ts';
import { reactionScore } from '../../analysis/drills/reaction.ts';
import { reasonScore } from '../../analysis/drills/reasons.ts';
import type { DrillFilter } from '../../ledger/drills.ts';
import { readCriteria } from './criteria.ts';
import { type DrillLedger, faultsOf, type JudgedRecord, judgedRecord } from './record.ts';

const DAY_MS = 86_400_000;
const PAGE = 500;

/** Every drill of a filter, oldest first. */
export function allDrills(ledger: Pick<DrillLedger, 'drills'>, filter: DrillFilter): Drill[] {
  const found: Drill[] = [];
  for (let after: { createdAt: number; n: number } | null | undefined; after !== null; ) {
    const page = ledger.drills.list({ filter, limit: PAGE, ...(after === undefined ? {} : { after }) });
    found.push(...page.drills);
    after = page.next;
  }
  return found.reverse();
}

function judgedDrills(ledger: DrillLedger, drills: readonly Drill[]): JudgedRecord[] {
  return drills.map((drill) => judgedRecord({ drill, events: ledger.drills.events(drill.id) }));
}

/** What speaks of the judge's eye as it is in use: calls from a place chosen because it is poor do not. */
function fromFairPlaces(records: readonly JudgedRecord[]): JudgedTrial[] {
  return records.flatMap((record) => record.trials).filter((one) => one.place !== 'poor');
}

interface Summed {
  readonly score: ReturnType<typeof faultScore>;
  readonly verdict: ReadyVerdict;
}

function summed(trials: readonly JudgedTrial[], fault: FaultNamed, sheet: string, criteria: ReadyCriteria): Summed {
  const score = faultScore(trials, fault, null);
  const { strictness, precision, detection } = score;
  const figures = {
    trials: score.trials,
    dPrime: detection.dPrime,
    criterion: detection.criterion,
    strictness,
    precision,
  };
  return { score, verdict: readyFor(figures, boundsFor(criteria, sheet, fault.code, fault.unit), criteria) };
}

/** Ready for a sheet: for every fault asked, of which there must be one. */
function allReady(verdicts: readonly ReadyVerdict[]): boolean {
  const asked = verdicts.filter((verdict) => verdict.kind !== 'not-asked');
  return asked.length > 0 && asked.every((verdict) => verdict.kind === 'ready');
}

function latest(ledger: DrillLedger, sheet: string): StandardSheet {
  const found = ledger.sheets.versions(sheet).at(-1);
  return found ?? ledger.sheets.get(sheet, 1);
}

/** A judge's scores on one sheet over time. `now`: milliseconds since 1970 UTC. Errors: `unknown-person`, `unknown-sheet`. */
export function judgeDrillsOf(ledger: DrillLedger, judge: string, sheetId: string, now: number): JudgeDrills {
  const person = ledger.people.get(judge);
  const sheet = latest(ledger, sheetId);
  const criteria = readCriteria(ledger.settings);
  const since = now - criteria.days * DAY_MS;
  const records = judgedDrills(ledger, allDrills(ledger, { judge, sheet: sheetId }));
  const recent = fromFairPlaces(records.filter(({ drill }) => drill.createdAt >= since));
  const faults = faultsOf(sheet).map((fault) => ({
    ...summed(recent, fault, sheetId, criteria),
    points: records.flatMap((record) => {
      const { curve: _curve, bins: _bins, ...score } = faultScore(fromFairPlaces([record]), fault, null);
      if (score.trials === 0) return [];
      return [{ drill: record.drill.id, kind: record.drill.task.kind, at: record.drill.createdAt, score }];
    }),
  }));
  const called = recent.filter(answered);
  return {
    judge: { id: person.id, name: calledName(person) },
    sheet: { id: sheet.id, station: sheet.station },
    drills: records.length,
    trials: called.length,
    detection: detectionScore(countsOf(recent)),
    reasons: reasonScore(recent),
    reaction: reactionScore(called),
    faults,
    since,
    ready: allReady(faults.map(({ verdict }) => verdict)),
  };
}

/** Who is ready, by these criteria: a line a judge and sheet, names in order. */
export function readyLines(ledger: DrillLedger, criteria: ReadyCriteria, now: number): ReadyLine[] {
  const drills = allDrills(ledger, { from: now - criteria.days * DAY_MS });
  const groups = Map.groupBy(drills, ({ judge, sheet }) => `${judge} ${sheet.id}`);
  return [...groups.values()]
    .flatMap((group): ReadyLine[] => {
      const [first] = group;
      if (first === undefined) return [];
      const person = ledger.people.get(first.judge);
      const sheet = latest(ledger, first.sheet.id);
      const trials = fromFairPlaces(judgedDrills(ledger, group));
      const faults = faultsOf(sheet).map((fault) => {
        const { score, verdict } = summed(trials, fault, sheet.id, criteria);
        const { code, name, unit, detection, strictness, precision } = score;
        const { dPrime, criterion } = detection;
        return { code, name, unit, trials: score.trials, dPrime, criterion, strictness, precision, verdict };
      });
      return [
        {
          judge: { id: person.id, name: calledName(person) },
          sheet: { id: sheet.id, station: sheet.station },
          trials: trials.filter(answered).length,
          lastAt: group.at(-1)?.createdAt ?? null,
          ready: allReady(faults.map(({ verdict }) => verdict)),
          faults,
        },
      ];
    })
    .sort((a, b) =>
      a.judge.name < b.judge.name ? -1 : a.judge.name > b.judge.name ? 1 : a.sheet.id < b.sheet.id ? -1 : 1,
    );
}
