import type { ReviewFilter } from '../../../shared-types/contract/review/filter.ts';
import type { GroupLine, GymView } from '../../../shared-types/contract/review/judges.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { hurryOf, placeOf } from './dependence.ts';
import { rateOf } from './estimates.ts';
import { namesOf, Stations } from './names.ts';
import { chartOf, spanPoints } from './points.ts';
import { reasonsOf } from './reasons.ts';
import { type ReviewLedger, readSelection } from './selection.ts';
import { costOf, totalsOf } from './totals.ts';
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
  const groups = new Map<
    string,
    { sets: number; attempts: number; noReps: number; seconds: number; reps: number; lastAt: number }
  >();
  for (const set of sets) {
    const key = keyOf(set);
    let group = groups.get(key);
    if (group === undefined) {
      group = { sets: 0, attempts: 0, noReps: 0, seconds: 0, reps: 0, lastAt: 0 };
      groups.set(key, group);
    }
    group.sets += 1;
    group.attempts += set.attempts;
    group.noReps += set.noReps;
    group.lastAt = set.at;
    if (set.costS === null) continue;
    group.seconds += set.costS;
    group.reps += set.counted;
  }
  return [...groups]
    .map(([id, { seconds, reps, ...group }]) => ({
      id,
      name: nameOf(id),
      ...group,
      rate: rateOf(group.noReps, group.attempts),
      per100S: reps === 0 ? null : (100 * seconds) / reps,
    }))
    .sort((a, b) => b.attempts - a.attempts || (a.id < b.id ? -1 : 1));
}
