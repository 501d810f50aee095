import type { EventRef, Verdict } from '../../../shared-types/log/events.ts';
import type { SetState } from '../../../shared-types/log/state.ts';
import { sampleQuantile } from '../distributions/sample-quantile.ts';
import type { EstimateWithInterval } from '../interval.ts';
import { pairedDifference } from '../proportions/paired-difference.ts';
import { wilsonInterval } from '../proportions/wilson.ts';
import type { Computed } from '../result.ts';
import { mcNemar } from '../tests/mcnemar.ts';
import { alignLogs } from './align-logs.ts';
import { cohenKappa } from './cohen-kappa.ts';
import { gwetAC1 } from './gwet-ac1.ts';
import { krippendorffAlpha } from './krippendorff-alpha.ts';

/** What one judge called at first; the faults are those named with the call, or the first ones named after it. */
export interface JudgedCall {
  readonly ref: EventRef;
  /** Milliseconds since the set's go. */
  readonly at: number;
  readonly verdict: Verdict;
  readonly faults: readonly string[];
}

/** One attempt as two judges called it; null where one of them did not. Never both. */
export interface JudgedAttempt {
  readonly first: JudgedCall | null;
  readonly second: JudgedCall | null;
}

/** Calls farther apart than this are not of one attempt, milliseconds. */
const TOLERANCE_MS = 1_000;

/**
 * Two logs of one set as attempts, in order. Slips are left out; reversals are not looked at, as they are somebody's later
 * word and not what the judge's eye saw.
 */
export function judgedAttempts(first: SetState, second: SetState): JudgedAttempt[] {
  const one = firstCalls(first);
  const other = firstCalls(second);
  const { pairs, onlyFirst, onlySecond } = alignLogs(
    one.map(({ at }) => at),
    other.map(({ at }) => at),
    TOLERANCE_MS,
  );
  return [
    ...pairs.map(([i, j]) => ({ first: one[i] ?? null, second: other[j] ?? null })),
    ...onlyFirst.map((i) => ({ first: one[i] ?? null, second: null })),
    ...onlySecond.map((j) => ({ first: null, second: other[j] ?? null })),
  ].sort((a, b) => timeOf(a) - timeOf(b));
}

/** The same attempts with the judges exchanged. */
export function exchanged(attempts: readonly JudgedAttempt[]): JudgedAttempt[] {
  return attempts.map(({ first, second }) => ({ first: second, second: first }));
}

export interface AgreementOfTwo {
  readonly pairs: number;
  readonly missedByFirst: number;
  readonly missedBySecond: number;
  readonly bothNoRep: number;
  readonly firstOnly: number;
  readonly secondOnly: number;
  readonly neither: number;
  /** Share of pairs with the same verdict, Wilson interval. */
  readonly agreed: Computed<EstimateWithInterval>;
  readonly kappa: Computed<EstimateWithInterval>;
  readonly ac1: Computed<EstimateWithInterval>;
  /** First less second: no-reps as a share of pairs. */
  readonly stricter: Computed<EstimateWithInterval>;
  readonly mcNemarP: number | null;
  readonly sameReason: { readonly count: number; readonly of: number };
  /** Seconds from the first judge's call to the second's: quartiles. */
  readonly lag: { readonly median: number; readonly low: number; readonly high: number } | null;
}

/** What two judges made of the same attempts, counted (with or without caution) against no-rep. Attempts may come from many sets. */
export function agreementOfTwo(attempts: readonly JudgedAttempt[]): AgreementOfTwo {
  const both = attempts.flatMap(({ first, second }) => (first === null || second === null ? [] : [{ first, second }]));
  const tally = (one: boolean, other: boolean) =>
    both.filter(({ first, second }) => isNoRep(first) === one && isNoRep(second) === other).length;
  const bothNoRep = tally(true, true);
  const firstOnly = tally(true, false);
  const secondOnly = tally(false, true);
  const neither = tally(false, false);
  const table = [
    [bothNoRep, firstOnly],
    [secondOnly, neither],
  ];
  const explained = both.filter(
    ({ first, second }) => isNoRep(first) && isNoRep(second) && first.faults.length > 0 && second.faults.length > 0,
  );
  const test = mcNemar(firstOnly, secondOnly);
  return {
    pairs: both.length,
    missedByFirst: attempts.filter(({ first }) => first === null).length,
    missedBySecond: attempts.filter(({ second }) => second === null).length,
    bothNoRep,
    firstOnly,
    secondOnly,
    neither,
    agreed: wilsonInterval(bothNoRep + neither, both.length),
    kappa: cohenKappa(table),
    ac1: gwetAC1(table),
    stricter: pairedDifference({ both: bothNoRep, firstOnly, secondOnly, neither }),
    mcNemarP: test.ok ? test.value.midPValue : null,
    sameReason: {
      count: explained.filter(({ first, second }) => first.faults.some((code) => second.faults.includes(code))).length,
      of: explained.length,
    },
    lag: lagOf(both.map(({ first, second }) => (second.at - first.at) / 1_000)),
  };
}

/**
 * Krippendorff's alpha over the attempts of a night: of the verdicts where both called, and with a missed call as a category of its
 * own. The first tells how alike the judges call, the second also whether they see the same attempts.
 */
export function alphaOfNight(attempts: readonly JudgedAttempt[]): {
  readonly verdicts: Computed<{ readonly alpha: number }>;
  readonly withMisses: Computed<{ readonly alpha: number }>;
} {
  const verdict = (call: JudgedCall | null) => (call === null ? null : isNoRep(call) ? 'no-rep' : 'counted');
  const units = attempts.map(({ first, second }) => [verdict(first), verdict(second)]);
  return {
    verdicts: krippendorffAlpha(units),
    withMisses: krippendorffAlpha(units.map((unit) => unit.map((value) => value ?? 'missed'))),
  };
}

export function isNoRep(call: Pick<JudgedCall, 'verdict'>): boolean {
  return call.verdict === 'no-rep';
}

function firstCalls(state: SetState): JudgedCall[] {
  return state.attempts
    .filter(({ withdrawn }) => !withdrawn)
    .map(({ ref, at, first, changes }) => {
      const explained = changes.find(({ event, withdrawn }) => event.kind === 'explain' && !withdrawn);
      const faults = first.faults.length > 0 || explained === undefined ? first.faults : explained.event.faults;
      return { ref, at, verdict: first.verdict, faults: first.verdict === 'counted' ? [] : faults };
    });
}

function lagOf(seconds: readonly number[]): AgreementOfTwo['lag'] {
  const [median, low, high] = [0.5, 0.25, 0.75].map((share) => sampleQuantile(seconds, share));
  return median === undefined || low === undefined || high === undefined ? null : { median, low, high };
}

function timeOf({ first, second }: JudgedAttempt): number {
  return first?.at ?? second?.at ?? 0;
}
