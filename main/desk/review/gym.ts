import type { ReviewFilter } from '../../../shared-types/contract/review/filter.ts';
import type { GroupLine, GymView } from '../../../shared-types/contract/review/judges.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { hurryOf, placeOf } from './dependence.ts';
import { rateOf } from './estimates.ts';
import { namesOf, Stations } from './names.ts';
import { chartOf, spanPoints } from './points.ts';
import { reasonsOf } from './reasons.ts';
import { type ReviewLedger, readSelection, sum } from './selection.ts';
import { costedSets, costOf, totalsOf } from './totals.ts';
import { trainOf } from './train.ts';
import { trendOf } from './trend.ts';

/** Everyone whom the filter lets in. */
export function gymView(ledger: ReviewLedger, { filter }: { readonly filter: ReviewFilter }): GymView {
  const stations = new Stations(ledger);
  const names = namesOf(ledger);
  const selection = readSelection(ledger, filter);
  const { sets } = selection;
  const reasons = reasonsOf(ledger, stations, selection);
  const named = (id: string) => names.get(id) ?? '';
  return {
    totals: totalsOf(sets),
    cost: costOf(sets),
    ...spanPoints(sets),
    trend: trendOf(sets, chartOf(sets).chart),
    reasons,
    place: placeOf(ledger, selection),
    hurry: hurryOf(ledger, selection),
    train: trainOf(ledger, selection, reasons),
    athletes: linesOf(sets, (set) => set.athlete, named),
    judges: linesOf(sets, (set) => set.judge, named),
    stations: linesOf(
      sets,
      (set) => set.sheet,
      (id) => stations.of(id).station,
    ),
  };
}

/** Sets together by a key, the most attempts first. */
function linesOf(
  sets: readonly ReviewSet[],
  keyOf: (set: ReviewSet) => string,
  nameOf: (key: string) => string,
): GroupLine[] {
  return [...Map.groupBy(sets, keyOf)]
    .map(([id, own]) => {
      const attempts = sum(own, (set) => set.attempts);
      const noReps = sum(own, (set) => set.noReps);
      const costed = costedSets(own);
      const counted = sum(costed, (set) => set.counted);
      return {
        id,
        name: nameOf(id),
        sets: own.length,
        attempts,
        noReps,
        rate: rateOf(noReps, attempts),
        per100S: counted === 0 ? null : (100 * sum(costed, (set) => set.costS)) / counted,
        lastAt: own.at(-1)?.at ?? 0,
      };
    })
    .sort((a, b) => b.attempts - a.attempts || (a.id < b.id ? -1 : 1));
}
