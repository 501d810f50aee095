import type { Estimate } from '../../../shared-types/contract/reports.ts';
import type { Reason, Reasons } from '../../../shared-types/contract/review/figures.ts';
import { ratioOfMoments } from '../../analysis/clusters/ratio.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { readRecord } from '../record.ts';
import { cycleHistory } from '../reports/cycle-history.ts';
import { sumSet } from '../reports/set-sums.ts';
import { asEstimate, combined, estimateOrNull, scaled } from './estimates.ts';
import type { Stations } from './names.ts';
import { type ReviewLedger, type Selection, sum } from './selection.ts';
import { costedSets, FEWEST_FOR_SPREAD } from './totals.ts';

/** Ids kept of each reason's sets. */
const LATEST = 20;

/** What one reason adds up to over the sets. `seconds` over the sets with a cost, `products` with their counted reps. */
interface Tally {
  readonly sheet: string;
  readonly code: string;
  noReps: number;
  seconds: number;
  squares: number;
  products: number;
  /** Places of its sets in the selection. */
  readonly places: number[];
}

/** One key for one fault of one station. */
export function reasonKey(sheet: string, code: string): string {
  return `${sheet}/${code}`;
}

/** The reasons of the selection, dearest first. */
export function reasonsOf(ledger: ReviewLedger, stations: Stations, selection: Selection): Reasons {
  const { sets } = selection;
  const costed = costedSets(sets);
  const tallies = tallyReasons(selection);
  const counted = sum(costed, (set) => set.counted);
  const squares = sum(costed, (set) => set.counted ** 2);
  const all = sum(tallies, (tally) => tally.noReps);
  const within = costed.length > 0 && costed.length < FEWEST_FOR_SPREAD ? withinSets(ledger, costed) : null;
  const per100 = (tally: Tally): Estimate | null => {
    if (counted === 0) return null;
    if (within !== null) {
      const own = within.get(reasonKey(tally.sheet, tally.code));
      return own === undefined ? null : scaled(own, 100 / counted);
    }
    const moments = { n: tally.seconds, d: counted, nn: tally.squares, nd: tally.products, dd: squares };
    return estimateOrNull(ratioOfMoments({ clusters: costed.length, ...moments }), 100);
  };
  const ids = idsOfPlaces(ledger, sets, tallies);
  const lines = tallies.map((tally): Reason => {
    const fault = stations.of(tally.sheet).faults.get(tally.code);
    return {
      sheet: tally.sheet,
      code: tally.code,
      name: fault?.name ?? '',
      cue: fault?.cue ?? '',
      remedy: fault?.remedy ?? '',
      noReps: tally.noReps,
      share: all === 0 ? 0 : tally.noReps / all,
      sets: tally.places.length,
      seconds: costed.length === 0 ? null : tally.seconds,
      per100S: per100(tally),
      latest: latestOf(tally).flatMap((place) => ids.get(sets[place]?.n ?? -1) ?? []),
    };
  });
  lines.sort((a, b) => worth(b) - worth(a) || b.noReps - a.noReps || (a.code < b.code ? -1 : 1));
  const known = lines.some((line) => line.per100S !== null);
  const intervals = within === null ? 'between-sets' : 'within-sets';
  return { lines, intervals: known ? intervals : null, setsWithCost: costed.length, counted };
}

function worth(line: Reason): number {
  return line.per100S?.value ?? 0;
}

function tallyReasons({ sets, reasons, placeOf }: Selection): Tally[] {
  const tallies = new Map<string, Tally>();
  for (const { n, fault, noReps, seconds } of reasons) {
    const place = placeOf(n);
    const set = sets[place];
    if (set === undefined) continue;
    const key = reasonKey(set.sheet, fault);
    let tally = tallies.get(key);
    if (tally === undefined) {
      tally = { sheet: set.sheet, code: fault, noReps: 0, seconds: 0, squares: 0, products: 0, places: [] };
      tallies.set(key, tally);
    }
    tally.noReps += noReps;
    tally.places.push(place);
    if (set.costS === null || seconds === null) continue;
    tally.seconds += seconds;
    tally.squares += seconds ** 2;
    tally.products += seconds * set.counted;
  }
  return [...tallies.values()];
}

function latestOf(tally: Tally): number[] {
  return tally.places.toSorted((a, b) => b - a).slice(0, LATEST);
}

function idsOfPlaces({ reports }: ReviewLedger, sets: readonly ReviewSet[], tallies: readonly Tally[]) {
  const numbers = new Set(tallies.flatMap(latestOf).flatMap((place) => sets[place]?.n ?? []));
  return reports.setIds([...numbers]);
}

/** Seconds by reason of a few sets, each summed anew from its log for the sake of its intervals. */
function withinSets(ledger: ReviewLedger, sets: readonly ReviewSet[]): Map<string, Estimate> {
  const parts = new Map<string, Estimate[]>();
  for (const id of ledger.reports.setIds(sets.map((set) => set.n)).values()) {
    const record = readRecord(ledger, id);
    const { cost } = sumSet(record, cycleHistory(ledger, record)).sums;
    for (const { fault, seconds } of cost.faults) {
      if (seconds === null) continue;
      const key = reasonKey(record.setup.sheet.id, fault ?? '');
      parts.set(key, [...(parts.get(key) ?? []), asEstimate(seconds)]);
    }
  }
  return new Map([...parts].map(([key, own]) => [key, combined(own)]));
}
