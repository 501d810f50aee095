import type { JudgeFilter } from '../../../shared-types/contract/review/filter.ts';
import type { JudgeView } from '../../../shared-types/contract/review/judges.ts';
import { calledName } from '../../../shared-types/people.ts';
import type { ReviewReason, ReviewSet } from '../../ledger/review.ts';
import { besideOf } from './beside.ts';
import { driftOf, stratumOf } from './drift.ts';
import { rateOf } from './estimates.ts';
import { namesOf, Stations } from './names.ts';
import { chartOf, setPoints } from './points.ts';
import { reasonKey } from './reasons.ts';
import { ledgerFilter, type ReviewLedger, sum } from './selection.ts';
import { totalsOf } from './totals.ts';

/** One judge beside the others on the same athletes. Errors: `unknown-person`. */
export function judgeView(ledger: ReviewLedger, { filter }: { readonly filter: JudgeFilter }): JudgeView {
  const { reports } = ledger;
  const judge = ledger.people.get(filter.judge);
  if (filter.sheet !== undefined) new Stations(ledger).of(filter.sheet);
  const own = reports.reviewSets(ledgerFilter(filter));
  // The judge's athletes and stations, whoever judged: what the judge is set beside.
  const { judges: _judges, ...others } = ledgerFilter(filter);
  const around = {
    ...others,
    athletes: [...new Set(own.map((set) => set.athlete))],
    sheets: [...new Set(own.map((set) => set.sheet))].map((id) => ({ id })),
  };
  const all = own.length === 0 ? [] : reports.reviewSets(around);
  const reasons = own.length === 0 ? [] : reports.reviewReasons(around);
  const judged = (set: ReviewSet, noReps: number) => ({
    stratum: stratumOf(set),
    own: set.judge === judge.id,
    noReps,
    attempts: set.attempts,
  });
  const share = (count: number) => ({
    count,
    per100: rateOf(
      count,
      sum(own, (set) => set.attempts),
    ),
  });
  return {
    judge: { id: judge.id, name: calledName(judge) },
    totals: totalsOf(own),
    points: setPoints(ledger, own, chartOf(own).points),
    overall: besideOf(all.map((set) => judged(set, set.noReps))),
    reasons: reasonsBeside(ledger, all, reasons, judged),
    drift: driftOf(own, all),
    slips: share(sum(own, (set) => set.slips)),
    reversals: share(sum(own, (set) => set.reversals)),
    athletes: athletesOf(ledger, own),
  };
}

function reasonsBeside(
  ledger: ReviewLedger,
  sets: readonly ReviewSet[],
  reasons: readonly ReviewReason[],
  judged: (set: ReviewSet, noReps: number) => Parameters<typeof besideOf>[0][number],
): JudgeView['reasons'] {
  const stations = new Stations(ledger);
  const setOf = new Map(sets.map((set) => [set.n, set]));
  const found = new Map<string, { sheet: string; code: string; noReps: Map<number, number> }>();
  for (const { n, fault, noReps } of reasons) {
    const sheet = setOf.get(n)?.sheet;
    if (sheet === undefined) continue;
    const key = reasonKey(sheet, fault);
    const entry = found.get(key) ?? { sheet, code: fault, noReps: new Map<number, number>() };
    entry.noReps.set(n, noReps);
    found.set(key, entry);
  }
  const bySheet = Map.groupBy(sets, (set) => set.sheet);
  return [...found.values()]
    .map(({ sheet, code, noReps }) => ({
      sheet,
      code,
      name: stations.of(sheet).faults.get(code)?.name ?? '',
      ...besideOf((bySheet.get(sheet) ?? []).map((set) => judged(set, noReps.get(set.n) ?? 0))),
    }))
    .sort((a, b) => b.own.noReps - a.own.noReps || (a.code < b.code ? -1 : 1));
}

function athletesOf(ledger: ReviewLedger, sets: readonly ReviewSet[]): JudgeView['athletes'] {
  const names = namesOf(ledger);
  return [...Map.groupBy(sets, (set) => set.athlete)]
    .map(([id, own]) => ({
      id,
      name: names.get(id) ?? '',
      sets: own.length,
      attempts: sum(own, (set) => set.attempts),
      noReps: sum(own, (set) => set.noReps),
    }))
    .sort((a, b) => b.attempts - a.attempts || (a.id < b.id ? -1 : 1));
}
