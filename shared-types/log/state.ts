import type { EventKind, EventOf, EventRef, Verdict } from './events.ts';

/** A later word on a call: a reversal, or the faults given afterwards. */
export interface CallChange {
  readonly event: EventOf<'reverse'> | EventOf<'explain'>;
  /** Pressed by mistake and withdrawn: kept here, without effect. */
  readonly withdrawn: boolean;
}

/** One try at a rep. `first` is what the judge called at once; `verdict` and `faults` are what stands now. */
export interface Attempt {
  readonly ref: EventRef;
  /** Milliseconds since go. */
  readonly at: number;
  readonly first: { readonly verdict: Verdict; readonly faults: readonly string[] };
  readonly changes: readonly CallChange[];
  readonly verdict: Verdict;
  readonly faults: readonly string[];
  /** A slip: the call stays in the log and counts for nothing. */
  readonly withdrawn: boolean;
}

/** A stop of the athlete, milliseconds since go; `end` is null while it lasts. */
export interface Break {
  readonly ref: EventRef;
  readonly start: number;
  readonly end: number | null;
  /** Who closed it: the judge, the next call (nobody marked the end), or the end of the set. */
  readonly closedBy: 'judge' | 'call' | 'end' | null;
}

export interface Mark {
  readonly ref: EventRef;
  readonly at: number;
  readonly metres: number;
}

export interface Appeal {
  readonly event: EventOf<'appeal'>;
  /** What became of it: a later appeal event for the same call overrides an earlier one. */
  readonly outcome: EventOf<'appeal'>['outcome'];
}

export type ClashKind =
  | 'wrong-set'
  | 'changed-event'
  | 'not-started'
  | 'already-started'
  | 'after-end'
  | 'no-such-event'
  | 'wrong-target'
  | 'already-withdrawn'
  | 'break-open'
  | 'no-break-open'
  | 'mark-goes-back';

/** An event that the log cannot follow: it stays in the log, has no effect, and is told in words. */
export interface Clash {
  readonly kind: ClashKind;
  readonly event: EventRef;
  readonly eventKind: EventKind;
  readonly message: string;
}

export type Phase = 'ready' | 'running' | 'finished' | 'abandoned';

/** What a log says of its set: the one reading that the live screen, the report, the exports and the tests share. */
export interface SetState {
  readonly phase: Phase;
  /** Wall clock at go, milliseconds since 1970 UTC; null before go. */
  readonly startedAt: number | null;
  /** Milliseconds from go to finish or abandon; null before. */
  readonly endedAt: number | null;
  readonly endedBy: EventRef | null;
  /** Every call in order, withdrawn ones too. */
  readonly attempts: readonly Attempt[];
  /** Withdrawn breaks and marks are left out; the log keeps them. */
  readonly breaks: readonly Break[];
  readonly marks: readonly Mark[];
  readonly appeals: readonly Appeal[];
  readonly signOff: EventOf<'sign-off'> | null;
  readonly slips: number;
  readonly reversals: number;
  readonly clashes: readonly Clash[];
  /** Distinct events read. */
  readonly events: number;
  /** `at` of the latest event read, milliseconds since go; 0 in an empty log. */
  readonly lastAt: number;
}

export interface Counts {
  /** Attempts that stand, withdrawn ones left out. */
  readonly attempts: number;
  /** Counted, with or without a caution. */
  readonly counted: number;
  readonly cautions: number;
  readonly noReps: number;
  /** No-reps without a fault named. */
  readonly unexplained: number;
  /** Metres reached at the last mark, 0 without one. */
  readonly metres: number;
}
