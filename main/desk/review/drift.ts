import type { JudgeView } from '../../../shared-types/contract/review/judges.ts';
import { clusteredDependence } from '../../analysis/trends/clustered-dependence.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { answerOf, binsOf } from './dependence.ts';
import { sum } from './selection.ts';

const HOUR_MS = 3_600_000;
/** Sets less than this apart, from the end of one to the go of the next, are one session (our own choice). */
const SESSION_GAP_MS = 3 * HOUR_MS;
const BIN_HOURS = 0.5;
const MOST_BINS = 16;

/**
 * Whether a judge's rate drifts over a session. `all`: the sets of every judge of the same athletes, for each athlete's own
 * rate at each station, which is held beside the hours.
 */
export function driftOf(judged: readonly ReviewSet[], all: readonly ReviewSet[]): JudgeView['drift'] {
  const own = judged.filter((set) => set.attempts > 0);
  const { hours, sessions } = sessionsOf(own);
  const rates = ratesOf(all);
  const beside = own.map((set) => rates.get(stratumOf(set)) ?? 0);
  const longest = hours.reduce((most, value) => Math.max(most, value), 0);
  const range = { fromX: 0, toX: longest, curveFrom: 0, curveTo: longest };
  const rows = {
    x: hours,
    counts: own.map((set) => set.noReps),
    totals: own.map((set) => set.attempts),
    clusters: sessions,
  };
  const differ = beside.some((rate) => rate !== beside[0]);
  const found = clusteredDependence(differ ? { ...rows, beside } : rows, range);
  const last = Math.min(MOST_BINS, Math.floor(longest / BIN_HOURS) + 1);
  const edges = Array.from({ length: own.length === 0 ? 0 : last }, (_, i) => ({
    from: i * BIN_HOURS,
    to: i === last - 1 && last === MOST_BINS ? null : (i + 1) * BIN_HOURS,
  }));
  const counts = {
    sets: judged.length,
    attempts: sum(own, (set) => set.attempts),
    noReps: sum(own, (set) => set.noReps),
  };
  return {
    bins: binsOf(hours, { attempts: rows.totals, noReps: rows.counts }, edges),
    ...answerOf(found, range, counts),
    sessions: new Set(sessions).size,
  };
}

/** Hours of each set since its session's first go, and the number of its session. Sets oldest first. */
function sessionsOf(sets: readonly ReviewSet[]): { hours: number[]; sessions: number[] } {
  const hours: number[] = [];
  const sessions: number[] = [];
  let session = 0;
  let began = 0;
  let ended = Number.NEGATIVE_INFINITY;
  for (const set of sets) {
    if (set.at - ended >= SESSION_GAP_MS) {
      session += 1;
      began = set.at;
    }
    ended = Math.max(ended, set.at + set.clockMs);
    hours.push((set.at - began) / HOUR_MS);
    sessions.push(session);
  }
  return { hours, sessions };
}

export function stratumOf({ athlete, sheet }: Pick<ReviewSet, 'athlete' | 'sheet'>): string {
  return `${athlete}/${sheet}`;
}

/** Log-odds of a no-rep by athlete and station, half a no-rep added to each side so that they are finite (Haldane 1956). */
function ratesOf(sets: readonly ReviewSet[]): Map<string, number> {
  return new Map(
    [...Map.groupBy(sets, stratumOf)].map(([stratum, own]) => {
      const noReps = sum(own, (set) => set.noReps);
      const attempts = sum(own, (set) => set.attempts);
      return [stratum, Math.log((noReps + 0.5) / (attempts - noReps + 0.5))];
    }),
  );
}
