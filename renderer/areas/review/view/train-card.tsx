import type { ReactNode } from 'react';
import type { Train } from '../../../../shared-types/contract/review/figures.ts';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './train-card.module.css';

interface TrainCardProps {
  readonly train: Train | null;
  /** No-reps in all, and how many of them have no reason. */
  readonly noReps: number;
  readonly unexplained: number;
  readonly repsName: string;
  /** For a whole gym: the station that the fault belongs to. */
  readonly station?: string;
}

/** So few no-reps with a reason say nothing of which comes first, whatever a resampling of them says. */
const fewNoReps = 3;

/** What to train, or to teach, first: why in numbers, how sure that is, and the remedy. */
export function TrainCard({ train, noReps, unexplained, repsName, station }: TrainCardProps): ReactNode {
  const words = useWords().review.answer.train;
  const { how } = useWords().review;
  const common = useWords().common;
  if (noReps === 0) return null;
  if (train === null) return <p className={styles.none}>{words.none}</p>;
  const reason =
    train.by === 'seconds' && train.per100S !== null
      ? words.bySeconds(train.per100S, train.share, train.noReps, repsName)
      : words.byNumber(train.share, train.noReps);
  return (
    <section className={styles.train} data-testid="train-first">
      <div className={styles.why}>
        <h2 className={styles.title}>
          {station === undefined ? words.title(train.name) : words.teach(train.name, station)}
        </h2>
        <p>
          {reason} {train.sure === null || noReps - unexplained < fewNoReps ? words.unsure : words.sure(train.sure)}{' '}
          {train.next === null ? null : words.next(train.next.name, train.next.per100S)}{' '}
          {unexplained > 0 ? words.unexplained(unexplained) : null}
        </p>
        <details className={`${styles.how} no-print`}>
          <summary>{common.howComputed}</summary>
          {how.train.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      </div>
      <div className={styles.remedy}>
        <p className={styles.cue}>{words.cue(train.cue)}</p>
        <p>
          <strong>{words.remedy}.</strong> {train.remedy}
        </p>
      </div>
    </section>
  );
}
