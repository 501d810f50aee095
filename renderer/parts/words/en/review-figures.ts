import type { Estimate } from '../../../../shared-types/contract/reports.ts';
import type { Why } from '../../../../shared-types/contract/review/figures.ts';
import type { Formats } from '../formats.ts';
import { reviewAnswerWords } from './review-answer.ts';
import { roughlyIn } from './review-roughly.ts';

/** Titles, axes, values and sentences of the figures. */
export function reviewFigureWords(formats: Formats) {
  const { number, plain, plural, percent, seconds, duration, shortDate, date } = formats;
  const { why } = reviewAnswerWords(formats);
  const roughly = roughlyIn(formats);
  const noReps = (count: number): string => `${plain(count)} ${plural(count, { one: 'no-rep', other: 'no-reps' })}`;
  const sets = (count: number): string => `${number(count)} ${plural(count, { one: 'set', other: 'sets' })}`;
  const within = ({ low, high }: Estimate): string => `${number(low * 100, 1)} to ${percent(high, 1)}`;
  const rateOf = (rate: Estimate): string => `${percent(rate.value, 1)} (${within(rate)})`;
  const secondsOf = ({ value, low, high }: Estimate): string =>
    `${seconds(value)} (${number(low, 1)} to ${seconds(high)})`;
  const needed = (count: number | null): string =>
    count === null ? 'more reps would hardly tell' : `about ${roughly(count)} more reps would`;
  const cannotTell = (reason: Why): string => `Can’t be told: ${why[reason]}.`;
  return {
    noReps,
    rateOf,
    secondsOf,
    within,
    cannotTell,
    dash: '–',
    walk: 'Point at a place, or walk with the arrow keys.',
    rate: {
      title: 'No-reps over time',
      label: (count: number) => `No-reps per 100 attempts over time, ${sets(count)}, each with its interval`,
      y: 'No-reps per 100 attempts',
      x: 'Day of the set',
      xSpan: { day: 'Day', week: 'Week from', month: 'Month', quarter: 'Quarter from' },
      spanLabel: (span: string, count: number) =>
        `No-reps per 100 attempts over time, ${number(count)} points, one a ${span}, each with its interval`,
      hint: 'Point at a set, or walk with the arrow keys; Enter opens it.',
      spanHint: 'Point at a span, or walk with the arrow keys; Enter narrows the view to it.',
      point: (at: string, rate: Estimate, count: number, attempts: number, outside: boolean) =>
        `${at}: ${noReps(count)} of ${number(attempts)}, ${rateOf(rate)}${outside ? ', outside the limits' : ''}`,
      key: (dot: 'set' | 'day' | 'week' | 'month' | 'quarter', band: boolean) =>
        `Dot and line: a ${dot} and its interval. ${band ? 'Band: the trend. ' : ''}Dashes: limits of chance; a ${dot} beyond them is drawn open.`,
      latestOnly: (count: number) => `The latest ${number(count)} sets; the trend is of all of them.`,
      columns: {
        day: 'Day',
        attempts: 'Attempts',
        noReps: 'No-reps',
        rate: 'Rate',
        lost: 'Lost per 100',
        sets: 'Sets',
      },
    },
    reasons: {
      title: (repsName: string) => `Seconds lost per 100 ${repsName}, by reason`,
      axis: 'Seconds per 100 counted',
      unexplained: 'No reason yet',
      unknown: 'not estimable',
      remark: (count: number, share: number) => `${noReps(count)}, ${percent(share)}`,
      sets: 'The latest sets behind it',
      none: 'Not one no-rep.',
      more: (count: number) => `Show ${number(count)} more`,
      fewer: 'Show fewer',
      nth: (place: number) => (place === 1 ? 'latest' : `${number(place)} back`),
      columns: { reason: 'Reason', noReps: 'No-reps', share: 'Share', lost: 'Lost per 100', sets: 'Sets' },
    },
    place: {
      title: 'Where in the set',
      x: 'Part of the set gone by',
      y: 'No-reps per 100 attempts',
      label: 'No-reps per 100 attempts along the set, in tenths, with a fitted curve and its band',
      bin: (from: number, to: number, count: number, attempts: number, rate: Estimate) =>
        `${percent(from)} to ${percent(to)} of the set: ${noReps(count)} of ${number(attempts)}, ${rateOf(rate)}`,
      rises: (from: number, to: number) =>
        `They pile up towards the end: from ${percent(from)} at the start to ${percent(to)}.`,
      falls: (from: number, to: number) =>
        `They come early: from ${percent(from)} at the start down to ${percent(to)} at the end.`,
      flat: 'They come evenly through the set.',
      unclear: (count: number | null) => `Whether they come early or late can’t be told yet; ${needed(count)}.`,
      columns: { part: 'Part', attempts: 'Attempts', noReps: 'No-reps', rate: 'Rate' },
    },
    hurry: {
      title: 'Hurry',
      x: 'Time of the attempt, against a clean one there',
      y: 'No-reps per 100 attempts',
      label: 'No-reps per 100 attempts by how quick the attempt was, with a fitted curve and its band',
      bin: (span: string, count: number, attempts: number, rate: Estimate) =>
        `${span} of a clean cycle: ${noReps(count)} of ${number(attempts)}, ${rateOf(rate)}`,
      span: (from: number, to: number | null) =>
        to === null ? `${percent(from)} and more` : `${number(from * 100)} to ${percent(to)}`,
      hurried: (from: number, fromX: number, to: number, toX: number) =>
        `Hurried attempts fail more: ${percent(from)} of those at ${percent(fromX)} of a clean cycle’s time, ${percent(to)} at ${percent(toX)}.`,
      slow: (from: number, fromX: number, to: number, toX: number) =>
        `Slow attempts fail more: ${percent(to)} of those at ${percent(toX)} of a clean cycle’s time, ${percent(from)} at ${percent(fromX)}.`,
      flat: 'Quick or slow makes no difference.',
      unclear: (count: number | null) => `Whether hurry matters can’t be told yet; ${needed(count)}.`,
      columns: { pace: 'Of a clean cycle', attempts: 'Attempts', noReps: 'No-reps', rate: 'Rate' },
    },
    picture: {
      title: 'Every attempt, a row a set',
      label: (count: number) => `The attempts of ${sets(count)}, a row a set, the latest last`,
      set: (at: string, attempts: number, count: number) =>
        `${at}: ${number(attempts)} ${plural(attempts, { one: 'attempt', other: 'attempts' })}, ${noReps(count)}`,
      more: 'Show more sets',
      columns: { day: 'Set', attempts: 'Attempts', noReps: 'No-reps', marks: 'Attempts in order' },
      legend: 'In the table: “.” counted, “!” with caution, a letter the fault of a no-rep, “?” one without a reason.',
    },
    ledgers: {
      title: 'Where the clock went',
      label: (count: number) => `Time ledgers of ${sets(count)}`,
      columns: { day: 'Set', clock: 'Clock', work: 'Work', noRep: 'No-reps', break: 'Breaks', start: 'Start' },
    },
    pacing: {
      title: 'Pacing',
      x: 'Day of the set',
      y: 'Slower at the end than at the start',
      label: 'How much slower the clean cycles are at the end of each set than at its start, with intervals',
      point: (at: string, change: Estimate) =>
        `${at}: ${percent(change.value)} (${number(change.low * 100)} to ${percent(change.high)})`,
      even: (change: number) => `The pace is even: ${percent(Math.abs(change))} from first to last.`,
      fading: (change: number) => `The pace fades by ${percent(change)} from start to end.`,
      rising: (change: number) => `The pace rises: cycles get ${percent(Math.abs(change))} shorter towards the end.`,
      unclear: 'Whether the pace is even can’t be told yet.',
      practice: 'The best hold an even pace; beginners start too fast and fade (common practice, no source).',
      follow: 'No-reps follow the fast starts.',
      doNotFollow: 'No-reps do not follow the fast starts.',
      startUnclear: 'Whether no-reps follow a fast start can’t be told yet.',
      sides: (fast: { sets: number; noReps: number; attempts: number }, others: typeof fast) =>
        `After the first quarter: ${noReps(fast.noReps)} of ${number(fast.attempts)} in ${sets(fast.sets)} with a fast start, ${noReps(others.noReps)} of ${number(others.attempts)} in the ${number(others.sets)} others.`,
      verdicts: { even: 'even', fading: 'fades', rising: 'rises', unclear: 'can’t tell', 'too-few': 'too few' },
      columns: {
        day: 'Set',
        first: 'First quarter',
        last: 'Last quarter',
        change: 'Change',
        breaks: 'Breaks',
        verdict: 'Pace',
      },
      breaks: (count: number, spentMs: number | null) =>
        count === 0 || spentMs === null ? number(count) : `${number(count)}, ${duration(spentMs, 0)}`,
    },
    totals: {
      title: 'In all',
      sets: 'Sets',
      attempts: 'Attempts',
      counted: (count: number) => `${number(count)} counted`,
      cautions: (count: number) => `${number(count)} with caution`,
      noReps: 'No-reps',
      ofAttempts: (rate: Estimate) => `${percent(rate.value, 1)} (${within(rate)})`,
      unexplained: (count: number) => `${number(count)} without a reason`,
      lost: (repsName: string) => `Lost per 100 ${repsName}`,
      range: ({ low, high }: Estimate) => `${number(low, 1)} to ${seconds(high)}`,
      each: 'One no-rep costs',
      split: (repeat: string, disruption: string) => `${repeat} repeats, ${disruption} the rest`,
      clockOf: (clock: string) => `${clock} on the clock`,
      changes: (reversals: number, slips: number) =>
        `${number(reversals)} ${plural(reversals, { one: 'reversal', other: 'reversals' })}, ${number(slips)} ${plural(slips, { one: 'slip', other: 'slips' })}`,
      unknown: 'not estimable',
      ofSets: (count: number) => `from ${sets(count)}`,
    },
    day: shortDate,
    date,
  };
}
