import type { Consequence } from '../../../shared-types/sheets/sheet.ts';
import type { Course, Lap, Run } from './course.ts';
import type { CostFlag } from './report.ts';

/** A gap inside a run longer than this many expected cycles is a long pause (our choice; common practice has no figure). */
const LONG_PAUSE_CYCLES = 3;

/** A place where the cost leans on the expected cycle: `expected` times e(x), and `noise` times one cycle's own scatter. */
export type CycleTerm = { readonly place: number; readonly expected: number; readonly noise: number };

/**
 * A run's cost written as `fixed` seconds plus terms in the expected cycle, so that the figure and its bootstrap come from
 * one and the same sum.
 */
export type RunTerms = {
  readonly run: Run;
  readonly fixed: number;
  readonly terms: readonly CycleTerm[];
  /** Weights of the no-reps in the run's cost, adding up to 1. */
  readonly shares: readonly number[];
  readonly repeat: number;
  readonly repeatedMetres: number;
  readonly addedSeconds: number;
  readonly unmarkedPause: number;
  readonly flags: readonly CostFlag[];
};

/**
 * The sum of one run, seconds (the definitions are in README.md beside this file).
 *
 * @param at the expected cycle e(x), seconds
 * @param metresPerJump the set's own, null where nothing tells it
 */
export function runTerms(
  course: Course,
  run: Run,
  at: (attempt: number) => number,
  consequence: Consequence,
  metresPerJump: number | null,
): RunTerms {
  const { laps } = course;
  const noReps = laps.slice(run.first, run.last + 1);
  const closing = run.after === null ? undefined : laps[run.after];
  // At the beginning the first attempt's own gap is the start it would have been had it counted.
  const timed = laps.slice(run.where === 'start' ? run.first + 1 : run.first, (run.after ?? run.last) + 1);
  const terms: CycleTerm[] = [];
  const flags: CostFlag[] = [];
  let fixed = 0;
  for (const lap of timed) {
    fixed += (lap.gap - lap.breaks) / 1000;
    const given = givenBack(lap, at);
    if (given === 0) continue;
    if (!flags.includes('unmarked-break-end')) flags.push('unmarked-break-end');
    // A break no longer than a cycle gives back all of itself, whatever the cycle.
    if (given === lap.openBreak / 1000) fixed += given;
    else terms.push({ place: lap.number, expected: 1, noise: 1 });
  }
  if (run.where === 'within' && closing !== undefined) terms.push({ place: closing.number, expected: -1, noise: -1 });
  const firstNumber = noReps[0]?.number ?? 1;
  // There no expectation is taken off, but one cycle stands for another: the first attempt's and the first counted rep's.
  if (run.where === 'start') terms.push({ place: firstNumber, expected: 0, noise: 1 });
  if (run.where === 'start' && closing !== undefined) terms.push({ place: closing.number, expected: 0, noise: -1 });

  const jumps = consequence.kind === 'metres-back' && metresPerJump !== null ? consequence.metres / metresPerJump : 0;
  const back = jumps * noReps.length;
  if (back > 0) terms.push({ place: closing?.number ?? firstNumber, expected: back, noise: 0 });
  if (consequence.kind === 'metres-back' && metresPerJump === null) flags.push('metres-unknown');
  const addedSeconds = addedSecondsOf(consequence, run);
  const unmarkedPause = pauseIn(timed, at);
  if (unmarkedPause > 0) flags.push('long-pause');
  if (run.after === null && course.running) flags.push('set-running');
  return {
    run,
    fixed: fixed + addedSeconds,
    terms,
    shares: sharesOf(course, run),
    repeat: repeatOf(noReps, at),
    repeatedMetres: back * at(closing?.number ?? firstNumber),
    addedSeconds,
    unmarkedPause,
    flags,
  };
}

/** Seconds that the sheet adds to the result for a run. */
export function addedSecondsOf(consequence: Consequence, run: Run): number {
  return consequence.kind === 'seconds-added' ? consequence.seconds * (run.last - run.first + 1) : 0;
}

/** Seconds of a recorded break that were the closing attempt's own: one expected cycle, or all of a shorter break. */
export function givenBack(lap: Lap, at: (attempt: number) => number): number {
  return lap.openBreak === 0 ? 0 : Math.min(lap.openBreak / 1000, at(lap.number));
}

function spent(lap: Lap, at: (attempt: number) => number): number {
  return (lap.gap - lap.breaks) / 1000 + givenBack(lap, at);
}

/** The attempts that did not count, at most one expected cycle each. */
function repeatOf(noReps: readonly Lap[], at: (attempt: number) => number): number {
  return noReps.reduce((sum, lap) => sum + Math.min(spent(lap, at), at(lap.number)), 0);
}

function pauseIn(timed: readonly Lap[], at: (attempt: number) => number): number {
  let sum = 0;
  for (const lap of timed) {
    const expected = at(lap.number);
    const seconds = spent(lap, at);
    if (seconds > LONG_PAUSE_CYCLES * expected) sum += seconds - expected;
  }
  return sum;
}

/**
 * How a run's no-reps divide its cost: each by the time from its call to the next attempt's call, less breaks, which is
 * what followed from it. After the last no-rep of a set nothing follows, so there each counts by its own attempt's time.
 */
export function sharesOf({ laps }: Course, run: Run): number[] {
  const step = run.after === null ? 0 : 1;
  const weights: number[] = [];
  for (let i = run.first; i <= run.last; i += 1) {
    const lap = laps[i + step];
    weights.push(lap === undefined ? 0 : lap.gap - lap.breaks);
  }
  const sum = weights.reduce((one, other) => one + other, 0);
  return weights.map((weight) => (sum > 0 ? weight / sum : 1 / weights.length));
}

/**
 * Metres of one counted jump of this set: at the last mark, the metres reached and those taken back before it, over the
 * jumps counted until then, less half a jump, since a mark is passed somewhere within a jump. Null without a mark after
 * the first counted jump.
 */
export function metresPerJump(
  course: Course,
  marks: readonly { readonly at: number; readonly metres: number }[],
  backMetres: number,
): number | null {
  const mark = marks.at(-1);
  if (mark === undefined) return null;
  const before = course.laps.filter((lap) => lap.at <= mark.at);
  const counted = before.filter((lap) => lap.counted).length;
  const metres = mark.metres + backMetres * (before.length - counted);
  return counted > 0 && metres > 0 ? metres / (counted - 0.5) : null;
}
