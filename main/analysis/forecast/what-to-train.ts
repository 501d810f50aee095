import { percentileInterval } from '../bootstrap/percentile-interval.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError } from '../interval.ts';
import { type RandomGenerator, seededGenerator } from '../random/generator.ts';
import { randomExponential, randomGamma, randomNormal } from '../random/variates.ts';
import { type Computed, computed, failed } from '../result.ts';

/** A no-rep as it was called: its faults (none if unexplained), and its cost in seconds, null where not estimable. */
export type ObservedNoRep = { readonly faults: readonly string[]; readonly cost: number | null };

export type WhatToTrainOptions = {
  /** Every fault of the sheet: one that has not been seen may still be the worst. */
  readonly candidates?: readonly string[];
  readonly level?: number;
  readonly draws?: number;
  readonly seed?: number;
};

export type FaultToTrain = {
  readonly fault: string;
  /** No-reps with it; one with two faults counts half for each. */
  readonly noReps: number;
  /** Seconds they cost; null when costs are not estimable. */
  readonly seconds: number | null;
  /** Seconds per 100 attempts that this fault will cost, with its uncertainty as a sample; no-reps per 100 where `by` is `count`. */
  readonly per100: EstimateWithInterval;
  /** Of all explained no-reps' seconds (or of their number), 0 to 1. */
  readonly share: number;
  /** Probability that this fault costs the most, 0 to 1. */
  readonly sure: number;
};

export type WhatToTrain = {
  /** By seconds, or by number where not every cost is estimable. */
  readonly by: 'seconds' | 'count';
  readonly first: FaultToTrain;
  /** `clear` from 90 % on, `likely` from 60 % on, else `open`: another fault may well cost more. */
  readonly how: 'clear' | 'likely' | 'open';
  /** Every fault seen, the one to train first at the head. */
  readonly ranking: readonly FaultToTrain[];
  readonly unexplained: number;
};

const CLEAR = 0.9;
const LIKELY = 0.6;
const DEFAULT_DRAWS = 4_000;
/** Beyond this many costs of a fault their mean is normal for every purpose here. */
const MOST_BOOTSTRAPPED = 200;

/**
 * Which fault to train first: the one that loses the most seconds. How sure that is comes from draws of what each fault
 * will cost in as many attempts again: its number from a gamma posterior (Poisson counts, Jeffreys' prior), its mean cost from
 * the Bayesian bootstrap (Rubin 1981, Annals of Statistics 9:130-134) of its own costs with one cost more of the mean of
 * all, so that a single dear no-rep does not decide alone. Errors: `no-data` without a no-rep that has a reason,
 * `invalid-input`.
 *
 * @param attempts attempts in which the no-reps were called, at least as many
 */
export function whatToTrain(
  noReps: readonly ObservedNoRep[],
  attempts: number,
  { candidates = [], level = DEFAULT_LEVEL, draws = DEFAULT_DRAWS, seed = 1 }: WhatToTrainOptions = {},
): Computed<WhatToTrain> {
  const error = levelError(level);
  if (error) return error;
  const explained = noReps.filter((noRep) => noRep.faults.length > 0);
  if (
    !(attempts >= noReps.length) ||
    !(draws >= 1) ||
    noReps.some(({ cost }) => cost !== null && !Number.isFinite(cost))
  ) {
    return failed('invalid-input', 'There must be as many attempts as no-reps, and costs must be finite.');
  }
  if (explained.length === 0) return failed('no-data', 'No no-rep has a reason yet.');
  const by = explained.every((noRep) => noRep.cost !== null) ? 'seconds' : 'count';
  const lossOf = (noRep: ObservedNoRep) => (by === 'seconds' ? (noRep.cost ?? 0) : 1);
  const mean = explained.reduce((sum, noRep) => sum + lossOf(noRep), 0) / explained.length;
  const groups = new Map<string, Part[]>(candidates.map((fault) => [fault, []]));
  for (const noRep of explained) {
    const weight = 1 / noRep.faults.length;
    for (const fault of noRep.faults) {
      const parts = groups.get(fault) ?? [];
      parts.push({ weight, value: lossOf(noRep) });
      groups.set(fault, parts);
    }
  }
  const faults = [...groups.keys()];
  const drawn = drawCosts([...groups.values()], mean, draws, seededGenerator(seed));
  const total = explained.reduce((sum, noRep) => sum + lossOf(noRep), 0);
  const ranking = faults.flatMap((fault, index): FaultToTrain[] => {
    const parts = groups.get(fault) ?? [];
    if (parts.length === 0) return [];
    const sum = parts.reduce((all, part) => all + part.weight * part.value, 0);
    const count = parts.reduce((all, part) => all + part.weight, 0);
    const samples = drawn.map((row) => (100 * (row[index] ?? 0)) / attempts);
    const interval = percentileInterval(samples, level);
    const estimate = (100 * sum) / attempts;
    return [
      {
        fault,
        noReps: count,
        seconds: by === 'seconds' ? sum : null,
        per100: interval.ok ? { estimate, ...interval.value } : { estimate, lower: estimate, upper: estimate, level },
        share: total > 0 ? sum / total : count / explained.length,
        sure: drawn.filter((row) => isGreatest(row, index)).length / draws,
      },
    ];
  });
  ranking.sort((one, other) => other.per100.estimate - one.per100.estimate || (one.fault < other.fault ? -1 : 1));
  const first = ranking[0];
  if (first === undefined) return failed('no-data', 'No no-rep has a reason yet.');
  const how = first.sure >= CLEAR ? 'clear' : first.sure >= LIKELY ? 'likely' : 'open';
  return computed({ by, first, how, ranking, unexplained: noReps.length - explained.length });
}

type Part = { readonly weight: number; readonly value: number };

/** For each draw, what each fault costs in all. */
function drawCosts(
  groups: readonly (readonly Part[])[],
  mean: number,
  draws: number,
  generator: RandomGenerator,
): Float64Array[] {
  const faults = groups.map((parts) => ({
    count: parts.reduce((sum, part) => sum + part.weight, 0),
    drawMean: meanDraws([...parts, { weight: 1, value: mean }]),
  }));
  return Array.from({ length: draws }, () =>
    Float64Array.from(faults, ({ count, drawMean }) => randomGamma(generator, count + 0.5) * drawMean(generator)),
  );
}

/** Draws of a mean by the Bayesian bootstrap; of many values by the normal law it then follows. */
function meanDraws(parts: readonly Part[]): (generator: RandomGenerator) => number {
  const weights = parts.reduce((sum, part) => sum + part.weight, 0);
  const centre = parts.reduce((sum, part) => sum + part.weight * part.value, 0) / weights;
  if (parts.length > MOST_BOOTSTRAPPED) {
    const spread = parts.reduce((sum, part) => sum + (part.weight * (part.value - centre)) ** 2, 0);
    return (generator) => centre + (Math.sqrt(spread) / weights) * randomNormal(generator);
  }
  return (generator) => {
    let drawnWeights = 0;
    let sum = 0;
    for (const part of parts) {
      const weight = part.weight * randomExponential(generator);
      drawnWeights += weight;
      sum += weight * part.value;
    }
    return sum / drawnWeights;
  };
}

function isGreatest(row: Float64Array, index: number): boolean {
  const value = row[index] ?? 0;
  return row.every((other, i) => i === index || other < value);
}
