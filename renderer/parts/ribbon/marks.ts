import type { Verdict } from '../../../shared-types/log/events.ts';
import type { Attempt } from '../../../shared-types/log/state.ts';
import type { Fault } from '../../../shared-types/sheets/sheet.ts';

/** One attempt as the ribbon draws it. */
export interface RibbonMark {
  /** 1, 2, … over the attempts that stand; null for a withdrawn one. */
  readonly number: number | null;
  readonly verdict: Verdict;
  readonly withdrawn: boolean;
  readonly reversed: boolean;
  /** The initial of its first fault; null where no fault is named. */
  readonly initial: string | null;
  /** The names of its faults. */
  readonly reasons: readonly string[];
  /** Milliseconds since go. */
  readonly at: number;
  /** Seconds since the attempt before it, null for the first. */
  readonly cycleS: number | null;
}

/** What the ribbon needs of an attempt: a fold's attempt has it, and so has a line of the report. */
export type RibbonAttempt = Pick<Attempt, 'at' | 'verdict' | 'faults' | 'withdrawn'> & { readonly reversed?: boolean };

/** The marks of a set's attempts, in order. Cycles run between attempts that stand. */
export function ribbonMarks(
  attempts: readonly RibbonAttempt[],
  faults: readonly Pick<Fault, 'code' | 'name' | 'initial'>[],
): readonly RibbonMark[] {
  const known = new Map(faults.map((fault) => [fault.code, fault]));
  let number = 0;
  let before: number | null = null;
  return attempts.map((attempt) => {
    const { at, verdict, withdrawn } = attempt;
    const cycleS: number | null = before === null ? null : (at - before) / 1_000;
    if (!withdrawn) {
      number += 1;
      before = at;
    }
    const first = attempt.faults[0];
    return {
      number: withdrawn ? null : number,
      verdict,
      withdrawn,
      reversed: attempt.reversed === true,
      initial: first === undefined ? null : (known.get(first)?.initial ?? first.slice(0, 1).toUpperCase()),
      reasons: attempt.faults.map((code) => known.get(code)?.name ?? code),
      at,
      cycleS,
    };
  });
}

export interface RibbonTally {
  readonly attempts: number;
  readonly counted: number;
  readonly cautions: number;
  readonly noReps: number;
  /** Each reason of the no-reps and how often, most frequent first; no-reps without one are left out. */
  readonly reasons: readonly (readonly [name: string, times: number])[];
  /** Median seconds from attempt to attempt; null with fewer than two. */
  readonly medianCycleS: number | null;
}

export function ribbonTally(marks: readonly RibbonMark[]): RibbonTally {
  const standing = marks.filter((mark) => !mark.withdrawn);
  const noReps = standing.filter((mark) => mark.verdict === 'no-rep');
  const times = new Map<string, number>();
  for (const name of noReps.flatMap((mark) => mark.reasons)) times.set(name, (times.get(name) ?? 0) + 1);
  return {
    attempts: standing.length,
    counted: standing.length - noReps.length,
    cautions: standing.filter((mark) => mark.verdict === 'caution').length,
    noReps: noReps.length,
    reasons: [...times].sort(([, one], [, other]) => other - one),
    medianCycleS: median(standing.flatMap((mark) => (mark.cycleS === null ? [] : [mark.cycleS]))),
  };
}

export function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}
