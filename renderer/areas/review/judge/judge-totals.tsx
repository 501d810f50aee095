import type { JudgeView } from '../../../../shared-types/contract/review/judges.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { BigFigures } from '../view/big-figures.tsx';

/** A judge's sets in a few large figures, with the slips and reversals. */
export function JudgeTotals({ data }: { data: JudgeView }) {
  const words = useWords().review;
  const { number, duration } = useFormats();
  const { totals: texts } = words.figures;
  const { totals, slips, reversals } = data;
  const share = (name: string, key: string, { count, per100 }: JudgeView['slips']) => ({
    key,
    name,
    value: number(count),
    notes: per100 === null ? [] : [words.judge.per100(per100)],
  });
  return (
    <BigFigures
      label={texts.title}
      figures={[
        {
          key: 'sets',
          name: texts.sets,
          value: number(totals.sets),
          notes: [texts.clockOf(duration(totals.clockMs, 0))],
        },
        {
          key: 'attempts',
          name: texts.attempts,
          value: number(totals.attempts),
          notes: [texts.counted(totals.counted), texts.cautions(totals.cautions)],
        },
        {
          key: 'no-reps',
          name: texts.noReps,
          value: number(totals.noReps),
          accent: true,
          notes: [
            ...(totals.rate === null ? [] : [texts.ofAttempts(totals.rate)]),
            ...(totals.unexplained > 0 ? [texts.unexplained(totals.unexplained)] : []),
          ],
        },
        share(words.judge.slips, 'slips', slips),
        share(words.judge.reversals, 'reversals', reversals),
      ]}
    />
  );
}
