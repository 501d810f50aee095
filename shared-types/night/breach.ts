/** The hard rules of a plan. The first group concerns one place in it, the second the night as a whole. */
export type RuleName =
  | 'unknown-name'
  | 'two-places'
  | 'lane-twice'
  | 'lane-not-for-station'
  | 'not-an-athlete'
  | 'not-a-judge'
  | 'not-here'
  | 'judging-right-before'
  | 'no-rest'
  | 'must-not-judge'
  | 'shadow-missing'
  | 'shadow-unwanted'
  | 'begun-changed'
  | 'station-missing'
  | 'station-twice'
  | 'station-not-entered'
  | 'too-many-heats'
  | 'loads-differ'
  | 'judges-not-compared'
  | 'pair-repeated';

/** One hard rule broken at one place. Ids of people, a lane or a heat where they say where; the message in plain words. */
export interface Breach {
  readonly rule: RuleName;
  /** 1, 2, …; null where it concerns the whole night. */
  readonly heat: number | null;
  readonly lane: string | null;
  readonly people: readonly string[];
  readonly message: string;
  /** An aim of the plan, worth knowing where missed, and no rule that must hold: pairs of judges as mixed as they can be. */
  readonly aim: boolean;
}
