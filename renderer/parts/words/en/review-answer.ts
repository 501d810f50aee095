import type { Estimate } from '../../../../shared-types/contract/reports.ts';
import type { Why } from '../../../../shared-types/contract/review/figures.ts';
import type { Formats } from '../formats.ts';
import { roughlyIn } from './review-roughly.ts';

/** Rates as people say them: so many in a hundred. */
function inHundred({ number }: Formats) {
  return (share: number): string => {
    const value = share * 100;
    return number(value, value > 0 && value < 2 ? 1 : 0);
  };
}

/** The answer of a view as sentences. */
export function reviewAnswerWords(formats: Formats) {
  const { number, percent, seconds, plain, plural } = formats;
  const hundred = inHundred(formats);
  const roughly = roughlyIn(formats);
  const reps = (count: number): string => `${roughly(count)} more ${plural(count, { one: 'rep', other: 'reps' })}`;
  const noReps = (count: number): string => `${plain(count)} ${plural(count, { one: 'no-rep', other: 'no-reps' })}`;
  const lost = ({ value, low, high }: Estimate): string =>
    `${seconds(value)} (${number(low, 1)} to ${number(high, 1)})`;
  const why: Record<Why, string> = {
    'no-sets': 'no set matches',
    'no-attempts': 'there is no attempt to go by',
    'few-sets': 'there are too few sets',
    'few-attempts': 'there are too few attempts',
    'no-no-reps': 'there is not one no-rep',
    'only-no-reps': 'not one attempt counted',
    'no-spread': 'they all lie at the same place',
    'no-others': 'no other judge has judged the same athletes',
    'no-cost': 'the cost of a no-rep cannot be estimated yet',
    'goal-unknown': 'these sets say nothing of such a goal',
    'not-computable': 'the method finds no answer here',
  };
  return {
    why,
    fewer: (from: number, to: number) => `No-reps went from ${hundred(from)} in 100 to ${hundred(to)}.`,
    more: (from: number, to: number) => `No-reps rose from ${hundred(from)} in 100 to ${hundred(to)}.`,
    real: (pValue: number) =>
      pValue < 0.001
        ? 'That is as good as certain.'
        : pValue < 0.01
          ? 'Very likely a real change.'
          : 'Likely a real change.',
    steady: (rate: number) => `${hundred(rate)} no-reps in 100 attempts.`,
    unclear: (needed: number | null) =>
      needed === null
        ? 'Whether that is changing can’t be told; any change is too small to see.'
        : `Whether that is changing can’t be told yet: about ${reps(needed)} would.`,
    noTrend: (reason: Why) => `Whether that is changing can’t be told yet: ${why[reason]}.`,
    clean: (attempts: number, high: number) =>
      `Not one no-rep in ${number(attempts)} ${plural(attempts, { one: 'attempt', other: 'attempts' })}. The true rate lies below ${percent(high, 1)}.`,
    noAttempt: 'No attempt was called in these sets.',
    onlyNoReps: (attempts: number) =>
      `Not one of ${number(attempts)} ${plural(attempts, { one: 'attempt', other: 'attempts' })} counted.`,
    /** After the change: by how many in 100, with the interval. */
    change: (difference: Estimate) => {
      const by = Math.abs(difference.value);
      const [low, high] = [Math.abs(difference.high), Math.abs(difference.low)].toSorted((a, b) => a - b);
      const word = difference.value < 0 ? 'fewer' : 'more';
      return `${hundred(by)} ${word} in 100 (${number((low ?? 0) * 100, 1)} to ${number((high ?? 0) * 100, 1)}).`;
    },
    overall: (rate: Estimate) =>
      `Over all: ${percent(rate.value, 1)} of attempts (${number(rate.low * 100, 1)} to ${percent(rate.high, 1)}).`,
    costs: (per100: Estimate, repsName: string) => `They cost ${lost(per100)} in every 100 ${repsName}.`,
    train: {
      title: (fault: string) => `Train “${fault}” first`,
      teach: (fault: string, station: string) => `Teach “${fault}” first (${station})`,
      bySeconds: (per100: Estimate, share: number, count: number, repsName: string) =>
        `${lost(per100)} lost in every 100 ${repsName}: ${percent(share)} of the time that explained no-reps take, from ${noReps(count)}.`,
      byNumber: (share: number, count: number) =>
        `${noReps(count)}, ${percent(share)} of those explained. What they cost cannot be told yet.`,
      sure: (probability: number) =>
        probability >= 0.995
          ? 'That it comes first is as good as certain.'
          : `That it comes first is ${percent(probability)} likely on these sets.`,
      unsure: 'Too few to say how sure that is.',
      next: (fault: string, per100: Estimate | null) =>
        per100 === null ? `Next: “${fault}”.` : `Next: “${fault}”, ${seconds(per100.value)}.`,
      remedy: 'Remedy',
      cue: (cue: string) => `Cue: “${cue}”`,
      none: 'No no-rep has a reason yet: name the faults in the sets, and this says what to train first.',
      /** Faults are few against the time lost to those without a reason. */
      unexplained: (count: number) => `${noReps(count)} ${plural(count, { one: 'has', other: 'have' })} no reason yet.`,
    },
  };
}
