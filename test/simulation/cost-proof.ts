import { attemptTable } from '../../main/analysis/cost/attempt-table.ts';
import type { CycleHistory } from '../../main/analysis/cost/expected-cycle.ts';
import { setCost } from '../../main/analysis/cost/set-cost.ts';
import type { Interval } from '../../main/analysis/interval.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import { randomNormal } from '../../main/analysis/random/variates.ts';
import type { AthleteModel, FaultModel, JudgeModel } from '../../main/analysis/simulator/models.ts';
import { EXACT_JUDGE } from '../../main/analysis/simulator/models.ts';
import { type SimulatedSet, simulateSet, type TrueAttempt } from '../../main/analysis/simulator/simulate-set.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import type { Goal } from '../../shared-types/log/setup.ts';
import type { Consequence } from '../../shared-types/sheets/sheet.ts';

/** A kind of set that the cost of no-reps is proved on. */
export type Scenario = {
  readonly name: string;
  readonly reps: number;
  readonly pace: Partial<AthleteModel['pace']>;
  readonly breaks?: boolean;
  readonly pauses?: boolean;
  /** Faults come with fatigue and haste. */
  readonly tiring?: boolean;
  readonly judge?: Partial<JudgeModel>;
  readonly goal?: Goal;
  /** Metres of a jump, and metres taken back for a no-rep. */
  readonly jumps?: { readonly metres: number; readonly back: number };
  /** Earlier sets of the athlete, where the set itself is too short: how many, and how their pace differs from set to set. */
  readonly history?: { readonly sets: number; readonly deviation: number };
};

const DRIFT = { fade: 0.25, fastStart: 0.08 };
const WAVES = { autocorrelation: 0.5, rhythm: { share: 0.03, period: 14 } };
const STEADY = {
  cycle: 2.4,
  fade: 0,
  fastStart: 0,
  noise: 0.07,
  autocorrelation: 0,
  rhythm: { share: 0, period: 10 },
};
const HUMAN = { lag: 180, jitter: 60 };

export const SCENARIOS: readonly Scenario[] = [
  { name: 'steady', reps: 100, pace: {} },
  { name: 'drift', reps: 100, pace: DRIFT, judge: HUMAN },
  { name: 'drift, autocorrelation, rhythm', reps: 100, pace: { ...DRIFT, ...WAVES }, judge: HUMAN },
  { name: 'drift, breaks', reps: 100, pace: DRIFT, breaks: true, judge: HUMAN },
  {
    name: 'all, unmarked pauses, fallible judge',
    reps: 100,
    pace: { ...DRIFT, ...WAVES },
    breaks: true,
    pauses: true,
    tiring: true,
    judge: {
      ...HUMAN,
      lenience: 0.05,
      severity: 0.003,
      slip: 0.01,
      reversal: 0.02,
      wordless: 0.1,
      forgetsBreakEnd: 0.2,
    },
  },
];

/** Short sets lean on few cycles: the median, or a local fit that has little to go by. */
export const SHORT_SCENARIOS: readonly Scenario[] = [
  { name: '30 reps: drift, autocorrelation', reps: 30, pace: { ...DRIFT, ...WAVES }, judge: HUMAN },
  { name: '12 reps: steady', reps: 12, pace: {}, judge: HUMAN },
  {
    name: '3 reps, 12 earlier sets',
    reps: 3,
    pace: {},
    judge: HUMAN,
    history: { sets: 12, deviation: 0.05 },
  },
];

/** Other goals and another consequence. */
export const GOAL_SCENARIOS: readonly Scenario[] = [
  {
    name: '5 minutes against the clock',
    reps: 115,
    pace: { ...DRIFT, ...WAVES },
    judge: HUMAN,
    goal: { kind: 'clock', milliseconds: 300_000 },
  },
  {
    name: '80 m of jumps, 2 m back',
    reps: 60,
    pace: { cycle: 4.2, ...DRIFT, ...WAVES },
    judge: HUMAN,
    goal: { kind: 'metres', metres: 80 },
    jumps: { metres: 1.6, back: 2 },
  },
];

export const RATES = [0.02, 0.05, 0.1, 0.15] as const;

function faults(rate: number, tiring: boolean): FaultModel[] {
  const more = { fatigue: tiring ? 1 : 0, hurry: tiring ? 0.5 : 0 };
  // About what makes the whole set's rate come out at `rate` although it rises over the set.
  const base = tiring ? rate * 0.55 : rate;
  return [
    { fault: 'depth', rate: base * 0.5, attempt: 0.93, reset: { mean: 1.4, deviation: 0.7 }, ...more },
    { fault: 'line', rate: base * 0.3, attempt: 1.02, reset: { mean: 1.0, deviation: 0.5 }, ...more },
    { fault: 'bounce', rate: base * 0.2, attempt: 1.1, reset: { mean: 2.2, deviation: 1.2 }, ...more },
  ];
}

const SET = '00000000-0000-4000-8000-000000000001';

/** One set of a scenario; `seed` decides everything. */
export function proofSet(scenario: Scenario, rate: number, seed: number): SimulatedSet {
  const athlete: AthleteModel = {
    pace: { ...STEADY, ...scenario.pace },
    faults: faults(rate, scenario.tiring ?? false),
    breaks: scenario.breaks
      ? { every: { mean: 25, deviation: 5 }, seconds: { mean: 9, deviation: 4 }, recovery: 0.3 }
      : null,
    start: { mean: 4, deviation: 1 },
    pause: { chance: scenario.pauses ? 0.005 : 0, seconds: { mean: 4, deviation: 2 } },
    metresPerJump: { mean: scenario.jumps?.metres ?? 0, deviation: 0 },
  };
  return simulateSet({
    set: SET,
    pad: 'a',
    wallClock: 1_780_000_000_000,
    athlete,
    judge: { ...EXACT_JUDGE, ...scenario.judge },
    goal: scenario.goal ?? { kind: 'reps', reps: scenario.reps },
    usualAttempts: Math.round(scenario.reps * (1 + rate)),
    markEvery: scenario.jumps ? 10 : null,
    metresBack: scenario.jumps?.back ?? 0,
    seed,
  });
}

/** A set of an invented athlete whose pace differs from day to day, and on demand the clean cycles of the sets before it. */
function withHistory(
  scenario: Scenario,
  rate: number,
  seed: number,
): { set: SimulatedSet; history: () => CycleHistory } {
  if (scenario.history === undefined) return { set: proofSet(scenario, rate, seed), history: () => [] };
  const generator = seededGenerator(seed);
  const { sets, deviation } = scenario.history;
  const cycle = scenario.pace.cycle ?? STEADY.cycle;
  const onOneDay = (reps: number, day: number) => {
    const pace = { ...scenario.pace, cycle: cycle * (1 + deviation * randomNormal(generator)) };
    return proofSet({ ...scenario, reps, pace }, rate, seed * 100 + day);
  };
  const set = onOneDay(scenario.reps, 0);
  const cleanCycles = (one: SimulatedSet) =>
    attemptTable(foldSet(SET, one.events)).flatMap((row) => (row.cleanCycle === null ? [] : [row.cleanCycle]));
  return { set, history: () => Array.from({ length: sets }, (_, day) => cleanCycles(onOneDay(20, day + 1))) };
}

/** Seconds truly lost by attempt `index`: its own, and the jumps that make up for metres taken back, at the pace after it. */
function trueCost(attempts: readonly TrueAttempt[], index: number, jumps: Scenario['jumps']): number {
  const attempt = attempts[index];
  if (attempt === undefined || attempt.counted) return 0;
  const next = attempts.slice(index + 1).find((later) => later.counted) ?? attempt;
  const back = jumps === undefined ? 0 : (jumps.back / jumps.metres) * next.pace;
  return attempt.repeat + attempt.disruption + back;
}

export type ProofLine = {
  readonly scenario: string;
  readonly rate: number;
  readonly sets: number;
  readonly realRate: number;
  /** Mean true cost of a set, seconds. */
  readonly meanTruth: number;
  /** Sum of estimates over sum of truths, less 1. */
  readonly bias: number;
  /** Standard error of `bias` over the sets. */
  readonly biasError: number;
  /** Share of sets whose interval holds the true total. */
  readonly coverage: number;
  /** The same over single runs. */
  readonly runCoverage: number;
  /** Mean width of the total's interval, seconds. */
  readonly width: number;
  readonly repeatBias: number;
  readonly notEstimable: number;
};

/**
 * Estimates against the truth over sets with at least one no-rep, `sets` of them; a set without one has no cost to be wrong
 * about, and neither has one that is not estimable (those are counted apart).
 */
export function proveCost(scenario: Scenario, rate: number, sets: number, seed: number, resamples = 399): ProofLine {
  const sums = { truth: 0, estimate: 0, squares: 0, covered: 0, runs: 0, runsCovered: 0, width: 0 };
  const counts = { done: 0, noReps: 0, attempts: 0, repeatTruth: 0, repeat: 0, notEstimable: 0 };
  const consequence: Consequence = scenario.jumps
    ? { kind: 'metres-back', metres: scenario.jumps.back }
    : { kind: 'repeat' };
  for (let i = 0; counts.done < sets; i += 1) {
    const { set, history } = withHistory(scenario, rate, seed + i);
    const { attempts } = set.truth;
    const noReps = attempts.filter((attempt) => !attempt.counted).length;
    if (noReps === 0) continue;
    counts.done += 1;
    const cost = setCost(foldSet(SET, set.events), { resamples, seed: i + 1, history: history(), consequence });
    if (cost.total === null) {
      counts.notEstimable += 1;
      continue;
    }
    counts.noReps += noReps;
    counts.attempts += attempts.length;
    const truth = attempts.reduce((sum, _, index) => sum + trueCost(attempts, index, scenario.jumps), 0);
    sums.truth += truth;
    sums.estimate += cost.total.estimate;
    sums.squares += (cost.total.estimate - truth) ** 2;
    sums.width += cost.total.upper - cost.total.lower;
    sums.covered += holds(cost.total, truth);
    counts.repeatTruth += set.truth.repeat;
    counts.repeat += cost.repeat ?? 0;
    for (const run of cost.runs) {
      if (run.cost === null) continue;
      const lost = run.attempts.reduce((sum, number) => sum + trueCost(attempts, number - 1, scenario.jumps), 0);
      sums.runs += 1;
      sums.runsCovered += holds(run.cost, lost);
    }
  }
  const known = counts.done - counts.notEstimable;
  return {
    scenario: scenario.name,
    rate,
    sets: counts.done,
    realRate: counts.noReps / counts.attempts,
    meanTruth: sums.truth / known,
    bias: sums.estimate / sums.truth - 1,
    biasError: Math.sqrt(sums.squares) / sums.truth,
    coverage: sums.covered / known,
    runCoverage: sums.runsCovered / sums.runs,
    width: sums.width / known,
    repeatBias: counts.repeat / counts.repeatTruth - 1,
    notEstimable: counts.notEstimable,
  };
}

function holds(interval: Interval, value: number): number {
  return interval.lower <= value && value <= interval.upper ? 1 : 0;
}
