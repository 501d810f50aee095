import type { Estimate } from '../../../../shared-types/contract/reports.ts';
import type { Formats } from '../formats.ts';
import { roughlyIn } from './review-roughly.ts';

/** A judge beside the others, and the gym over everyone. */
export function reviewJudgeWords(formats: Formats) {
  const { number, plain, plural, percent, seconds } = formats;
  const roughly = roughlyIn(formats);
  const points = (value: number): string => number(Math.abs(value) * 100, 1);
  const span = ({ low, high }: Estimate): string => `${number(low * 100, 1)} to ${number(high * 100, 1)}`;
  const noReps = (count: number): string => `${plain(count)} ${plural(count, { one: 'no-rep', other: 'no-reps' })}`;
  const sign = (value: number): string => (value > 0 ? '+' : value < 0 ? '−' : '');
  return {
    title: (name: string) => `${name}, judge`,
    more: (difference: Estimate) =>
      `Calls ${points(difference.value)} more no-reps in 100 than the others do on the same athletes (${span(difference)}).`,
    fewer: (difference: Estimate) =>
      `Calls ${points(difference.value)} fewer no-reps in 100 than the others do on the same athletes (${span({ value: -difference.value, low: -difference.high, high: -difference.low })}).`,
    alike: 'Calls as many no-reps as the others do on the same athletes.',
    unclear: (needed: number | null) =>
      needed === null
        ? 'Beside the others no difference can be told.'
        : `Beside the others no difference can be told yet: about ${roughly(needed)} more attempts would.`,
    tooFew: (reason: string) => `Beside the others nothing can be told: ${reason}.`,
    noProof: 'No proof of strictness: the athletes may have been in other form.',
    own: (own: number, others: number) => `${percent(own, 1)} of attempts, the others ${percent(others, 1)}.`,
    besideTitle: 'No-reps beside the other judges, by reason',
    besideAxis: 'More (+) or fewer (−) no-reps per 100 attempts than the others',
    besideText: (difference: Estimate) =>
      `${Number(points(difference.value)) === 0 ? '' : sign(difference.value)}${points(difference.value)} (${span(difference)})`,
    besideTick: (value: number) => `${sign(value)}${plain(Math.abs(value))}`,
    besideRemark: (own: number, others: number) => `${percent(own, 1)}, others ${percent(others, 1)}`,
    all: 'All reasons together',
    columns: { reason: 'Reason', own: 'Own', others: 'Others', difference: 'Difference per 100', attempts: 'Attempts' },
    driftTitle: 'Over a session',
    driftX: 'Hours since the session’s first go',
    driftY: 'No-reps per 100 attempts',
    driftLabel: 'No-reps per 100 attempts over the hours of a session, with a fitted curve and its band',
    driftBin: (from: number, to: number | null, count: number, attempts: number, rate: string) =>
      `${to === null ? `${plain(from)} hours and more` : `${plain(from)} to ${plain(to)} hours`}: ${noReps(count)} of ${number(attempts)}, ${rate}`,
    rises: (sessions: number) => `The longer the session, the more no-reps are called (${number(sessions)} sessions).`,
    falls: (sessions: number) => `The longer the session, the fewer no-reps are called (${number(sessions)} sessions).`,
    flat: (sessions: number) => `The calls hold steady over a session (${number(sessions)} sessions).`,
    driftUnclear: (sessions: number) =>
      `Whether the calls drift over a session can’t be told yet (${number(sessions)} sessions).`,
    hours: 'Hours',
    hourSpan: (from: number, to: number | null) =>
      to === null ? `${plain(from)} and more` : `${plain(from)} to ${plain(to)}`,
    slips: 'Slips',
    reversals: 'Reversals',
    per100: (share: Estimate) =>
      `${number(share.value * 100, 2)} per 100 attempts (${number(share.low * 100, 2)} to ${number(share.high * 100, 2)})`,
    athletes: 'Athletes judged',
    gym: {
      reps: 'reps',
      tableOf: (title: string) => `${title}, their figures`,
      athletes: 'Athletes',
      judges: 'Judges',
      stations: 'Stations',
      columns: { name: 'Name', sets: 'Sets', attempts: 'Attempts', rate: 'No-reps', lost: 'Lost per 100' },
    },
    span: (rate: Estimate) => `(${span(rate)})`,
    lost: (value: number | null) => (value === null ? '–' : seconds(value)),
  };
}
