import type { RibbonMark, RibbonTally } from '../../ribbon/marks.ts';
import type { Formats } from '../formats.ts';

/** The ribbon of attempts, in words. */
export function ribbonWords({ number, seconds, plural, list }: Formats) {
  const counted = (count: number) => `${number(count)} counted`;
  const noReps = (count: number) => `${number(count)} ${plural(count, { one: 'no-rep', other: 'no-reps' })}`;
  const attempts = (count: number) => `${number(count)} ${plural(count, { one: 'attempt', other: 'attempts' })}`;
  const verdicts = { counted: 'counted', caution: 'counted with caution', 'no-rep': 'no-rep' } as const;
  return {
    hint: 'Height is the time of each attempt. An open notch is a no-rep.',
    pictureAxis: 'Attempt of the set',
    pictureHint: 'Height is the time of each attempt, an open notch a no-rep. Arrow keys walk, Enter opens the set.',
    summary: (tally: RibbonTally): string => {
      if (tally.attempts === 0) return 'No attempt yet';
      const reasons = tally.reasons.map(([name, times]) => `${number(times)} × ${name}`);
      return [
        `${attempts(tally.attempts)}: ${counted(tally.counted)}, ${noReps(tally.noReps)}`,
        tally.cautions === 0 ? '' : `, ${number(tally.cautions)} with caution`,
        reasons.length === 0 ? '.' : ` (${list(reasons)}).`,
        tally.medianCycleS === null ? '' : ` Typical time from one to the next ${seconds(tally.medianCycleS)}.`,
      ].join('');
    },
    mark: (mark: RibbonMark): string => {
      const parts = [
        mark.number === null ? 'withdrawn' : number(mark.number),
        verdicts[mark.verdict],
        ...mark.reasons,
        mark.verdict === 'no-rep' && mark.reasons.length === 0 ? 'no reason yet' : '',
        mark.reversed ? 'reversed' : '',
        mark.cycleS === null ? '' : seconds(mark.cycleS),
      ];
      return parts.filter((part) => part !== '').join(', ');
    },
    atTime: (clock: string) => `, at ${clock}`,
    lineSummary: (all: number, without: number) => `${attempts(all)}, ${noReps(without)}`,
  };
}
