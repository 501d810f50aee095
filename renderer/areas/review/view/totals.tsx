import type { ReviewCost, ReviewTotals } from '../../../../shared-types/contract/review/figures.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { BigFigures } from './big-figures.tsx';

/** The sets in a few large figures. `cost` is left out where a view has none. */
export function Totals({ totals, cost, repsName }: { totals: ReviewTotals; cost?: ReviewCost; repsName: string }) {
  const { totals: words, dash } = useWords().review.figures;
  const { number, seconds, duration } = useFormats();
  const notes = (...list: readonly (string | false)[]): readonly string[] => list.filter((note) => note !== false);
  return (
    <BigFigures
      label={words.title}
      figures={[
        {
          key: 'sets',
          name: words.sets,
          value: number(totals.sets),
          notes: [words.clockOf(duration(totals.clockMs, 0))],
        },
        {
          key: 'attempts',
          name: words.attempts,
          value: number(totals.attempts),
          notes: notes(
            words.counted(totals.counted),
            totals.cautions > 0 && words.cautions(totals.cautions),
            totals.reversals + totals.slips > 0 && words.changes(totals.reversals, totals.slips),
          ),
        },
        {
          key: 'no-reps',
          name: words.noReps,
          value: number(totals.noReps),
          accent: true,
          notes: notes(
            totals.rate !== null && words.ofAttempts(totals.rate),
            totals.unexplained > 0 && words.unexplained(totals.unexplained),
          ),
        },
        ...(cost === undefined || totals.noReps === 0
          ? []
          : [
              {
                key: 'per-100',
                name: words.lost(repsName),
                value: cost.per100S === null ? dash : seconds(cost.per100S.value),
                accent: true,
                notes: notes(
                  cost.per100S === null ? words.unknown : words.range(cost.per100S),
                  cost.setsWithCost > 0 && cost.setsWithCost < totals.sets && words.ofSets(cost.setsWithCost),
                ),
              },
              {
                key: 'each',
                name: words.each,
                value: cost.perNoRepS === null ? dash : seconds(cost.perNoRepS.value),
                notes: [cost.perNoRepS === null ? words.unknown : words.range(cost.perNoRepS)],
              },
            ]),
      ]}
    />
  );
}
