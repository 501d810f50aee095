/** How an invented athlete moves at one station, on one day. Shares are of the clean cycle; times in seconds. */
export type AthleteModel = {
  readonly pace: PaceModel;
  readonly faults: readonly FaultModel[];
  readonly breaks: BreakModel | null;
  /** From go to the beginning of the first attempt: mean, and standard deviation. */
  readonly start: Spread;
  /** Chance, at each rep, of a pause that no judge would mark (chalk, a look at the clock), and its length. */
  readonly pause: { readonly chance: number; readonly seconds: Spread };
  /** Metres of a counted jump; 0 where distance does not count. */
  readonly metresPerJump: Spread;
};

export type Spread = { readonly mean: number; readonly deviation: number };

/** The clean cycle over a set: cycle * (1 + fade * progress - fastStart * exp(-rep / 12) + rhythm + noise). */
export type PaceModel = {
  readonly cycle: number;
  /** Growth of the cycle from the first rep to the last. */
  readonly fade: number;
  /** How much quicker than their own pace the very first reps are; gone after some 30 reps. */
  readonly fastStart: number;
  /** Standard deviation of the noise. */
  readonly noise: number;
  /** Correlation of the noise from one rep to the next (first-order autoregression). */
  readonly autocorrelation: number;
  /** A wave over the reps, such as breathing by threes or a song's beat. */
  readonly rhythm: { readonly share: number; readonly period: number };
};

export type FaultModel = {
  readonly fault: string;
  /** Chance at the set's beginning and at the athlete's own pace. */
  readonly rate: number;
  /** Log-odds more at the end of the set than at its beginning. */
  readonly fatigue: number;
  /** Log-odds more for each tenth by which the attempt is quicker than the pace there. */
  readonly hurry: number;
  /** The failed attempt's own time, as a share of a clean cycle. */
  readonly attempt: number;
  /** Disruption after the call, log-normal. */
  readonly reset: Spread;
};

export type BreakModel = {
  /** Attempts from break to break. */
  readonly every: Spread;
  readonly seconds: Spread;
  /** Part of the fade so far that a break takes away. */
  readonly recovery: number;
};

/** How an invented judge calls. Chances are 0 to 1; times in milliseconds. */
export type JudgeModel = {
  /** Chance to let a fault pass as counted. */
  readonly lenience: number;
  /** Chance to call a good rep a no-rep. */
  readonly severity: number;
  readonly lag: number;
  /** Standard deviation of the press about its lag. */
  readonly jitter: number;
  /** Chance of a caution on a good rep. */
  readonly caution: number;
  /** Chance to press the wrong call, withdraw it and call again. */
  readonly slip: number;
  /** Chance, on a no-rep, to take the call back at once for counted; and, on a counted rep with a fault, to turn it. */
  readonly reversal: number;
  /** Chance to give no reason at once; half of these are explained after the set. */
  readonly wordless: number;
  /** Chance to forget the end of a break, which the next call then closes. */
  readonly forgetsBreakEnd: number;
};

/** A judge who sees everything and whose press is exact to the millisecond: for tests. */
export const EXACT_JUDGE: JudgeModel = {
  lenience: 0,
  severity: 0,
  lag: 0,
  jitter: 0,
  caution: 0,
  slip: 0,
  reversal: 0,
  wordless: 0,
  forgetsBreakEnd: 0,
};
