import type { EventRef } from '../log/events.ts';
import type { NightEventKind, NightEventOf, PadRole } from './events.ts';
import type { Arrangement, Assignment } from './night.ts';

export type NightPhase = 'planned' | 'open' | 'closed';
export type HeatPhase = 'planned' | 'open' | 'running' | 'closed';

/** A lane of a heat with the sets judged on it; null until the heat is opened. */
export interface HeatLane extends Assignment {
  readonly set: string | null;
  readonly shadowSet: string | null;
}

export interface Heat {
  /** 1, 2, … */
  readonly number: number;
  readonly phase: HeatPhase;
  /** Desk's wall clock, milliseconds since 1970 UTC; null before. */
  readonly openedAt: number | null;
  readonly goAt: number | null;
  readonly closedAt: number | null;
  readonly lanes: readonly HeatLane[];
}

export interface NightPad {
  readonly device: string;
  readonly name: string;
  readonly role: PadRole;
  readonly lane: string | null;
  readonly revoked: boolean;
}

/** What was noted of a person's coming and going, with the desk's wall clock. */
export interface Presence {
  readonly state: NightEventOf<'presence'>['state'];
  readonly at: number;
}

export type NightClashKind =
  | 'wrong-night'
  | 'changed-event'
  | 'not-arranged'
  | 'not-open'
  | 'already-open'
  | 'begun-changed'
  | 'no-such-heat'
  | 'no-such-lane'
  | 'no-such-person'
  | 'no-such-device'
  | 'no-such-set'
  | 'out-of-order'
  | 'set-there-already';

/** An event that the log cannot follow: it stays in the log, has no effect, and is told in words. */
export interface NightClash {
  readonly kind: NightClashKind;
  readonly event: EventRef;
  readonly eventKind: NightEventKind;
  readonly message: string;
}

/** What a log says of its night. */
export interface NightState {
  readonly phase: NightPhase;
  /** Null before the first `arrange`. */
  readonly arrangement: Arrangement | null;
  readonly heats: readonly Heat[];
  /** By person; who is absent here is expected as arranged. */
  readonly presence: ReadonlyMap<string, Presence>;
  readonly pads: readonly NightPad[];
  /** By set: how the clock of the pad that judged it stood to the desk's, milliseconds. */
  readonly clocks: ReadonlyMap<string, { readonly offsetMs: number; readonly uncertaintyMs: number }>;
  readonly appeals: readonly NightEventOf<'appeal'>[];
  readonly clashes: readonly NightClash[];
}
