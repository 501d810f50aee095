import type { SetReport } from '../../../../shared-types/contract/reports.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { answerOf } from './answer.ts';
import styles from './answer-card.module.css';

/** The answer as a sentence: what to train first, and why. */
export function AnswerCard({ report }: { report: SetReport }) {
  const words = useWords().judge.finished.sentence;
  const answer = answerOf(report);
  if (answer.kind !== 'train') {
    const text = { 'no-attempt': words.none, clean: words.clean, 'explain-first': words.explainFirst }[answer.kind];
    return <p className={styles.sentence}>{text}</p>;
  }
  const { train } = answer;
  return (
    <section className={styles.answer} data-testid="train-first">
      <p className={styles.sentence}>
        {words.train(train.name, train.noReps, train.seconds, train.share)}{' '}
        {train.sure !== null ? words.sure(train.sure) : answer.few ? words.unsure : null}
      </p>
      <p className={styles.remedy}>
        <strong>{words.remedy}</strong> {train.remedy} <em>{words.cue(train.cue)}</em>
      </p>
    </section>
  );
}
