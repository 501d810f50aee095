import type { Pacing, SetPace } from '../../../shared-types/contract/review/pacing.ts';
import { ratioOfSums } from '../../analysis/clusters/ratio.ts';
import { type FastStarts, fastStarts } from '../../analysis/pacing/fast-starts.ts';
import { EVEN_SHARE, type Pacing as PaceOfSet, pacing } from '../../analysis/pacing/pacing.ts';
import type { Computed } from '../../analysis/result.ts';
import type { AttemptsOfSet } from '../../ledger/reports.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { asEstimate, whyNot } from './estimates.ts';
import { sum } from './selection.ts';
import { FEWEST_FOR_SPREAD } from './totals.ts';
import { SIGNIFICANCE } from './trend.ts';

/** An odds ratio surely below this is too small to speak of following (our own margin). */
const HARDLY_MORE = 1.5;

/** Pace of each set and over all of them. `factsOf`: each set's own facts by id. */
export function pacingOf(sets: readonly AttemptsOfSet[], factsOf: ReadonlyMap<string, ReviewSet>): Pacing {
  const paced = sets.map((set) => ({ set, facts: factsOf.get(set.id), pace: paceOf(set) }));
  const found = paced.flatMap(({ pace }) => (pace.ok ? [pace.value] : []));
  return {
    sets: paced.map(({ set, facts, pace }) => lineOf(set.id, facts, pace)),
    overall: overallOf(found, sets.length),
    fastStart: startsOf(found, sets.length),
  };
}

function paceOf({ attempts }: AttemptsOfSet): Computed<PaceOfSet> {
  const rows = attempts.map(({ number, verdict, clean, cycleMs }) => ({
    number,
    verdict,
    cleanCycle: clean && cycleMs !== null ? cycleMs / 1_000 : null,
  }));
  return pacing({ rows, breaks: [], clock: attempts.at(-1)?.at ?? 0 });
}

function lineOf(id: string, facts: ReviewSet | undefined, pace: Computed<PaceOfSet>): SetPace {
  const head = {
    id,
    at: facts?.at ?? 0,
    cleanCycles: facts?.cleanCycles ?? 0,
    breaks: facts?.breaks ?? 0,
    breakMs: facts?.breakMs ?? null,
  };
  if (!pace.ok) {
    const why = pace.error.kind === 'too-few-data' ? 'few-attempts' : 'not-computable';
    return { ...head, firstQuarterS: null, lastQuarterS: null, change: null, verdict: { kind: 'too-few', why } };
  }
  const { firstQuarter, lastQuarter, drift, verdict } = pace.value;
  return {
    ...head,
    firstQuarterS: firstQuarter,
    lastQuarterS: lastQuarter,
    change: asEstimate(drift),
    verdict: { kind: verdict === 'cannot-tell' ? 'unclear' : verdict },
  };
}

/** Mean drift of the sets, each counting alike, with Student's t over sets; the margins are those of a single set. */
function overallOf(found: readonly PaceOfSet[], sets: number): Pacing['overall'] {
  const drifts = found.map((pace) => pace.drift.estimate);
  const mean = ratioOfSums(
    drifts,
    drifts.map(() => 1),
  );
  if (found.length < FEWEST_FOR_SPREAD || !mean.ok) {
    return { change: null, verdict: { kind: 'too-few', why: sets === 0 ? 'no-sets' : 'few-sets' } };
  }
  const { estimate, lower, upper } = mean.value;
  const change = asEstimate(mean.value);
  if (lower > 0 && estimate >= EVEN_SHARE) return { change, verdict: { kind: 'fading' } };
  if (upper < 0 && estimate <= -EVEN_SHARE) return { change, verdict: { kind: 'rising' } };
  const isEven = lower > -2 * EVEN_SHARE && upper < 2 * EVEN_SHARE;
  return { change, verdict: { kind: isEven ? 'even' : 'unclear' } };
}

function startsOf(found: readonly PaceOfSet[], sets: number): Pacing['fastStart'] {
  const starts = found.flatMap(({ start }) => (start === null ? [] : [start]));
  const sideOf = (isFast: boolean) => {
    const own = starts.filter((start) => start.isFast === isFast);
    return {
      sets: own.length,
      attempts: sum(own, (start) => start.noRepsAfter.total),
      noReps: sum(own, (start) => start.noRepsAfter.count),
    };
  };
  const answer = fastStarts(
    starts.map(({ change, noRepsAfter }) => ({
      change,
      noRepsAfter: noRepsAfter.count,
      attemptsAfter: noRepsAfter.total,
    })),
  );
  const noReps = sum(starts, (start) => start.noRepsAfter.count);
  return {
    fast: sideOf(true),
    others: sideOf(false),
    oddsRatio: answer.ok ? asEstimate(answer.value.oddsRatio) : null,
    pValue: answer.ok ? answer.value.pValue : null,
    verdict: answer.ok
      ? verdictOf(answer.value)
      : { kind: 'too-few', why: whyNot(answer.error.kind, { sets, noReps }) },
  };
}

function verdictOf({ oddsRatio, pValue }: FastStarts): Pacing['fastStart']['verdict'] {
  if (pValue < SIGNIFICANCE) return { kind: oddsRatio.estimate > 1 ? 'follow' : 'do-not-follow' };
  return { kind: oddsRatio.upper < HARDLY_MORE ? 'do-not-follow' : 'unclear' };
}
