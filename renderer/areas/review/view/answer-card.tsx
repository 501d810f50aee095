import type { ReviewCost, ReviewTotals, Trend } from '../../../../shared-types/contract/review/figures.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { type Answer, answerOf } from './answer.ts';
import styles from './view.module.css';

interface AnswerCardProps {
  readonly totals: ReviewTotals;
  readonly trend: Trend;
  readonly cost: ReviewCost;
  readonly repsName: string;
}

/** The answer as a sentence with its uncertainty, and in a second line what it rests on. */
export function AnswerCard({ totals, trend, cost, repsName }: AnswerCardProps) {
  const words = useWords().review.answer;
  const answer = answerOf(totals, trend);
  const changed = answer.kind === 'fewer' || answer.kind === 'more';
  const details = [
    changed && trend.fitted !== null ? words.change(trend.fitted.difference) : '',
    totals.rate !== null && totals.noReps > 0 ? words.overall(totals.rate) : '',
    cost.per100S !== null ? words.costs(cost.per100S, repsName) : '',
  ].filter((part) => part !== '');
  return (
    <section data-testid="answer">
      <p className={styles.sentence}>{sentences(answer, words)}</p>
      {details.length === 0 ? null : <p className={styles.beside}>{details.join(' ')}</p>}
    </section>
  );
}

function sentences(answer: Answer, words: ReturnType<typeof useWords>['review']['answer']): string {
  switch (answer.kind) {
    case 'fewer':
    case 'more':
      return `${words[answer.kind](answer.from, answer.to)} ${words.real(answer.pValue)}`;
    case 'unclear':
      return `${words.steady(answer.rate)} ${words.unclear(answer.stillNeeded)}`;
    case 'no-trend':
      return `${words.steady(answer.rate)} ${words.noTrend(answer.why)}`;
    case 'clean':
      return words.clean(answer.attempts, answer.high);
    case 'only-no-reps':
      return words.onlyNoReps(answer.attempts);
    case 'no-attempt':
      return words.noAttempt;
  }
}
