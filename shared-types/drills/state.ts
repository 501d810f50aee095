import type { EventRef, Verdict } from '../log/events.ts';
import type { FaultCode } from '../motion/specification.ts';
import type { Place } from './drill.ts';
import type { DrillEventKind, DrillEventOf, ShownMargins } from './events.ts';

/** A call as it stands. */
export interface DrillCall {
  readonly ref: EventRef;
  /** Milliseconds since the rep, or the stream, began. */
  readonly afterMs: number;
  readonly verdict: Verdict;
  readonly faults: readonly string[];
  /** Where the judge stood when not at the place given. */
  readonly place: Place | null;
}

/** One rep that was shown, with its truth. */
export interface DrillTrial {
  readonly trial: number;
  readonly place: Place;
  readonly margins: ShownMargins;
  /** Faults truly there under the tolerances of the sheet, in the sheet's order; none: the rep is good. */
  readonly broken: readonly FaultCode[];
  /** In a stream milliseconds since its beginning; of a single rep 0 and its length. */
  readonly startMs: number;
  readonly endMs: number;
  readonly dueMs: number;
  readonly seenMs: number;
  /** The call of a single rep; null while there is none, and always in a stream. */
  readonly call: DrillCall | null;
  readonly spoilt: boolean;
  /** What it was made from; null for the reps of a stream, which follow from the stream's own. */
  readonly specification: DrillEventOf<'rep'>['specification'] | null;
}

export type DrillClashKind =
  | 'wrong-drill'
  | 'changed-event'
  | 'not-begun'
  | 'already-begun'
  | 'after-end'
  | 'wrong-kind'
  | 'shown-already'
  | 'no-such-rep'
  | 'called-already'
  | 'no-such-call'
  | 'already-withdrawn';

/** An event that the log cannot follow: it stays in the log, has no effect, and is told in words. */
export interface DrillClash {
  readonly kind: DrillClashKind;
  readonly event: EventRef;
  readonly eventKind: DrillEventKind;
  readonly message: string;
}

/** What a log says of its drill. */
export interface DrillState {
  readonly phase: 'ready' | 'running' | 'ended';
  /** Wall clock at the beginning, milliseconds since 1970 UTC; null before. */
  readonly startedAt: number | null;
  readonly endedBecause: DrillEventOf<'end'>['why'] | null;
  /** In the order shown; a spoilt one stays in its place. */
  readonly trials: readonly DrillTrial[];
  /** The calls of a stream, by time; empty in the other drills, where they stand with their trials. */
  readonly calls: readonly DrillCall[];
  readonly stream: DrillEventOf<'stream'> | null;
  readonly slips: number;
  readonly clashes: readonly DrillClash[];
}
