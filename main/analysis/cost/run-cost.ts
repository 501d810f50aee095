import type { Consequence } from '../../../shared-types/sheets/sheet.ts';
import type { EstimateWithInterval } from '../interval.ts';
import type { Course, Run } from './course.ts';
import type { NoRepCost, RunCost } from './report.ts';
import { addedSecondsOf, type RunTerms, sharesOf } from './run-terms.ts';

/** The report of a run whose cost is known. */
export function knownRun(course: Course, terms: RunTerms, cost: EstimateWithInterval): RunCost {
  const own = cost.estimate - terms.repeatedMetres - terms.addedSeconds;
  const repeat = Math.min(terms.repeat, Math.max(0, own));
  return {
    attempts: numbersOf(course, terms.run),
    where: terms.run.where,
    cost,
    repeat,
    disruption: own - repeat,
    repeatedMetres: terms.repeatedMetres,
    addedSeconds: terms.addedSeconds,
    unmarkedPause: terms.unmarkedPause,
    flags: cost.estimate < 0 ? [...terms.flags, 'below-zero'] : terms.flags,
    noReps: noRepsOf(course, terms.run, terms.shares, cost),
  };
}

/** The report of a run whose cost is not estimable. */
export function unknownRun(course: Course, run: Run, consequence: Consequence): RunCost {
  return {
    attempts: numbersOf(course, run),
    where: run.where,
    cost: null,
    repeat: null,
    disruption: null,
    repeatedMetres: null,
    addedSeconds: addedSecondsOf(consequence, run),
    unmarkedPause: 0,
    flags: course.laps.some((lap) => lap.counted) ? [] : ['no-counted-rep'],
    noReps: noRepsOf(course, run, sharesOf(course, run), null),
  };
}

function numbersOf(course: Course, run: Run): number[] {
  return course.laps.slice(run.first, run.last + 1).map((lap) => lap.number);
}

function noRepsOf(course: Course, run: Run, shares: readonly number[], cost: EstimateWithInterval | null): NoRepCost[] {
  return course.laps.slice(run.first, run.last + 1).map((lap, i) => {
    const share = shares[i] ?? 0;
    return {
      number: lap.number,
      faults: lap.attempt.faults,
      share,
      seconds: cost === null ? null : scaled(cost, share),
    };
  });
}

function scaled(cost: EstimateWithInterval, by: number): EstimateWithInterval {
  // Adding zero turns a negative zero, which JSON does not know, into zero.
  const times = (value: number) => value * by + 0;
  return { estimate: times(cost.estimate), lower: times(cost.lower), upper: times(cost.upper), level: cost.level };
}
