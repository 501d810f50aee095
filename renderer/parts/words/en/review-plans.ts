import type { Estimate } from '../../../../shared-types/contract/reports.ts';
import type { Formats } from '../formats.ts';
import { roughlyIn } from './review-roughly.ts';

/** Comparing, forecasting, and the race card. */
export function reviewPlanWords(formats: Formats) {
  const { number, percent, seconds, duration, plural, metres } = formats;
  const roughly = roughlyIn(formats);
  const span = ({ low, high }: Estimate): string => `${number(low)} to ${number(high)}`;
  const times = (count: number, one: string, other: string): string =>
    `${number(count)} ${plural(count, { one, other })}`;
  return {
    compare: {
      title: (name: string, station: string) => `${name}, ${station}: compared`,
      by: 'Compare by',
      bys: { before: 'Came from', load: 'Load', judge: 'Judge', tag: 'Tag', time: 'Time' },
      a: 'First',
      b: 'Second',
      tired: 'After work',
      tagged: (tag: string) => `Tagged ${tag}`,
      from: 'From',
      to: 'To',
      fewer: (less: string, more: string, by: number) =>
        `Fewer no-reps in “${less}” than in “${more}”, by ${number(by * 100, 1)} in 100.`,
      real: 'A difference like this is unlikely to be chance.',
      unclear: (needed: number | null, second: string) =>
        needed === null
          ? 'No difference can be told, and more reps on one side alone would not tell it.'
          : `No difference can be told yet: about ${roughly(needed)} more attempts in “${second}” would.`,
      shared: 'Some sets stand on both sides, so nothing can be concluded. Choose sides that share none.',
      tooFew: (side: string, why: string) => `Nothing to compare: in “${side}” ${why}.`,
      nothing: 'These sets have nothing to compare by: all are alike.',
      rates: 'No-reps per 100 attempts',
      costs: (repsName: string) => `Seconds lost per 100 ${repsName}`,
      pace: 'Clean cycle',
      paceOf: (cycle: string) => `clean cycle ${cycle}`,
      difference: 'Difference, first less second',
      differenceOf: ({ value, low, high }: Estimate) =>
        `${number(value * 100, 1)} in 100 (${number(low * 100, 1)} to ${number(high * 100, 1)})`,
      columns: { measure: 'Figure', difference: 'Difference' },
      sets: 'Sets',
      attempts: 'Attempts',
      behind: (side: string) => `Sets of “${side}”`,
      link: 'Compare two conditions or two spans',
    },
    forecast: {
      title: 'Forecast',
      goal: 'For',
      kinds: { reps: 'Reps', metres: 'Metres', clock: 'Seconds' },
      amount: 'How many',
      rate: 'If the rate were',
      badGoal: 'A goal of at least 1.',
      badRate: 'From 0 to 95.',
      present: 'At the present rate',
      half: 'At half of it',
      given: (rate: number) => `At ${percent(rate, 1)}`,
      sentence: (goal: string, value: Estimate, half: Estimate | null) =>
        `${goal} at this rate: +${number(value.value)} s (${span(value)})${half === null ? '.' : `; at half the rate: +${number(half.value)} s (${span(half)}).`}`,
      repsSentence: (goal: string, value: Estimate, half: Estimate | null) =>
        `${goal} at this rate: ${number(value.value)} reps lost (${span(value)})${half === null ? '.' : `; at half the rate: ${number(half.value)} (${span(half)}).`}`,
      noRepsOnly: (goal: string, value: Estimate) =>
        `${goal} at this rate: ${number(value.value)} no-reps (${span(value)}). What they cost cannot be told yet.`,
      none: (why: string) => `No forecast: ${why}.`,
      axis: 'Seconds that no-reps will cost',
      axisReps: 'Reps that no-reps will cost',
      axisNoReps: 'No-reps',
      text: ({ value, low, high }: Estimate) => `${seconds(value, 0)} (${number(low)} to ${number(high)})`,
      textReps: ({ value, low, high }: Estimate) => `${number(value, 1)} (${number(low, 1)} to ${number(high, 1)})`,
      remark: (rate: Estimate, noReps: Estimate) =>
        `${percent(rate.value, 1)}, ${number(noReps.value)} no-reps (${span(noReps)})`,
      columns: {
        scenario: 'Rate',
        rate: 'No-reps of attempts',
        noReps: 'No-reps',
        seconds: 'Seconds',
        reps: 'Reps lost',
      },
      goalText: {
        reps: (count: number, name: string) => `${number(count)} ${name}`,
        metres: (far: number) => metres(far, far % 1 === 0 ? 0 : 1),
        clock: (milliseconds: number) => duration(milliseconds, 0),
      },
    },
    card: {
      title: (name: string, station: string) => `Race card: ${name}, ${station}`,
      wish: 'Wished time',
      wishHint: 'Minutes and seconds, like 5:00. Empty: your usual pace.',
      badWish: 'Write it like 5:00.',
      target: 'Target, call to call',
      targetOf: (value: number) => `${seconds(value, 2)}`,
      goalIn: (goal: string, time: string) => `${goal} in ${time}`,
      howTitle: 'How is this computed?',
      lostPer100: (lost: string, repsName: string) => `${lost} lost per 100 ${repsName}`,
      own: (usual: number, quickest: number) =>
        `Your usual clean cycle takes ${seconds(usual, 2)}, in your quickest set ${seconds(quickest, 2)}.`,
      easy: 'Within your usual pace.',
      stretch: 'A stretch: quicker than usual, but you have held such a pace over a whole set.',
      out: (quickest: string) => `Out of reach on these sets: the quickest you could hope for is ${quickest}.`,
      outPace: (value: number) => `It would ask for ${seconds(value, 2)} a rep.`,
      none: (why: string) => `No plan yet: ${why}.`,
      plan: 'Plan',
      columns: { reps: 'Counted', at: 'Clock at', pause: 'Then' },
      pause: (milliseconds: number) => `break ${seconds(milliseconds / 1000, 0)}`,
      on: 'go on',
      done: 'done',
      held: (noReps: string) => `${noReps} of it kept for no-reps at the present rate.`,
      noBreaks: 'No breaks planned: quarters to look at the clock by.',
      cues: 'Your own faults, dearest first',
      share: (value: number) => `${percent(value)} of your no-reps`,
      noFaults: 'No fault of your own on record.',
      forecast: 'What no-reps will cost',
      day: 'On the day',
      items: [
        'Be there at least 90 minutes before the start (common practice).',
        'Warm up, and build up to race pace.',
        'Mind heat and water: drink before you are thirsty, cool down after.',
        'Shoes that grip; a dry floor; dry hands.',
        'Start at the target, not above it: an even pace.',
      ],
      cautions: 'Cautions',
      basis: (sets: number) => `From the latest ${times(sets, 'set', 'sets')}; an estimate, not a promise.`,
    },
  };
}
