import type { ReviewTotals } from '../../../../shared-types/contract/review/figures.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import type { Choice } from '../address/choice.ts';

/** What a view is of, in words: its days, conditions and size. */
export function useAbout(): (choice: Choice, totals: ReviewTotals, judge: string | undefined) => string {
  const words = useWords().review.filters;
  const { list } = useFormats();
  return (choice, totals, judge) => {
    const { firstAt, lastAt, sets, attempts } = totals;
    const parts = [
      firstAt === null || lastAt === null ? '' : words.days(firstAt, lastAt),
      choice.loadsKg.length === 0 ? '' : list(choice.loadsKg.map(words.loadOf)),
      choice.before.length === 0 ? '' : list(choice.before.map((value) => words.beforeOf[value])),
      judge === undefined ? '' : words.judgedBy(judge),
      choice.tags.length === 0 ? '' : words.tagged(choice.tags),
      words.size(sets, attempts),
    ];
    return parts.filter((part) => part !== '').join(' · ');
  };
}
