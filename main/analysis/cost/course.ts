import { counts } from '../../../shared-types/log/fold.ts';
import type { Attempt, SetState } from '../../../shared-types/log/state.ts';

/** One attempt that stands, on the set's clock. Times in whole milliseconds. */
export type Lap = {
  readonly attempt: Attempt;
  /** 1, 2, … over the attempts that stand. */
  readonly number: number;
  readonly counted: boolean;
  /** Since go; never before the previous lap's and never after the clock, even where pads' clocks disagree. */
  readonly at: number;
  /** Since the previous lap, or since go. */
  readonly gap: number;
  /** Recorded breaks inside the gap. */
  readonly breaks: number;
  /** Of these, the break that this very call closed: nobody marked its end, so the attempt itself lies inside it. */
  readonly openBreak: number;
  /** Since the previous lap, go or the last marked break end; null where this call closed a break. */
  readonly own: number | null;
  /** The gap runs from one counted rep to the next with neither a no-rep nor a break between. */
  readonly clean: boolean;
};

/** A set laid out on its clock: the gaps of the laps and the tail add up to `clock`. Whole milliseconds. */
export type Course = {
  readonly clock: number;
  readonly laps: readonly Lap[];
  /** From the last lap (or go) to the end, or to now. */
  readonly tail: { readonly gap: number; readonly breaks: number };
  readonly running: boolean;
};

type Span = { readonly start: number; readonly end: number; readonly byCall: boolean };

/**
 * Lays out the attempts that stand; a withdrawn call is as if it had not been.
 *
 * @param now milliseconds since go, for a set that still runs; without it the clock stands at the latest event
 */
export function readCourse(state: SetState, now?: number): Course {
  const running = state.phase === 'running';
  const reached = Math.max(state.lastAt, Math.floor(now ?? 0));
  const clock = state.phase === 'ready' ? 0 : (state.endedAt ?? reached);
  const spans = breakSpans(state, clock);
  const laps: Lap[] = [];
  let previous = 0;
  let previousCounted = false;
  for (const attempt of state.attempts) {
    if (attempt.withdrawn) continue;
    const at = Math.min(Math.max(attempt.at, previous), clock);
    const ending = spans.filter((span) => span.end <= at && (span.end > previous || laps.length === 0));
    const last = ending.at(-1);
    const breaks = overlap(spans, previous, at);
    const openBreak = last?.byCall === true && last.end === at ? overlap([last], previous, at) : 0;
    const closedByCall = last?.byCall === true && last.end === at;
    const counted = counts(attempt);
    laps.push({
      attempt,
      number: laps.length + 1,
      counted,
      at,
      gap: at - previous,
      breaks,
      openBreak,
      own: closedByCall ? null : at - Math.max(previous, last?.end ?? 0),
      clean: counted && previousCounted && breaks === 0 && last === undefined,
    });
    previous = at;
    previousCounted = counted;
  }
  return { clock, laps, tail: { gap: clock - previous, breaks: overlap(spans, previous, clock) }, running };
}

/** The breaks in order, apart from each other and inside the clock; one that still runs lasts until now. */
function breakSpans(state: SetState, clock: number): Span[] {
  const spans: Span[] = [];
  let free = 0;
  for (const item of state.breaks) {
    const start = Math.min(Math.max(item.start, free), clock);
    const end = Math.min(Math.max(item.end ?? clock, start), clock);
    spans.push({ start, end, byCall: item.closedBy === 'call' });
    free = end;
  }
  return spans;
}

function overlap(spans: readonly Span[], from: number, to: number): number {
  let sum = 0;
  for (const span of spans) sum += Math.max(0, Math.min(span.end, to) - Math.max(span.start, from));
  return sum;
}

/** No-reps that follow each other with no counted rep between. Positions are indices into the laps. */
export type Run = {
  readonly first: number;
  readonly last: number;
  /** The counted rep before and after; null at the set's beginning and end. */
  readonly before: number | null;
  readonly after: number | null;
  readonly where: 'start' | 'within' | 'end';
};

/** The runs of a course, in order. A run with no counted rep on either side is named `start`. */
export function findRuns(laps: readonly Lap[]): Run[] {
  const runs: Run[] = [];
  let before: number | null = null;
  for (let i = 0; i < laps.length; i += 1) {
    if (laps[i]?.counted === true) {
      before = i;
      continue;
    }
    const first = i;
    while (laps[i + 1]?.counted === false) i += 1;
    const after = i + 1 < laps.length ? i + 1 : null;
    runs.push({ first, last: i, before, after, where: before === null ? 'start' : after === null ? 'end' : 'within' });
  }
  return runs;
}
