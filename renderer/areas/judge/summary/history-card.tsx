import { Button } from '../../../parts/controls/button.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { historyLines } from './history.ts';
import styles from './history-card.module.css';
import type { SetDeeds } from './set-deeds.ts';
import { useHistoryWords } from './use-history-words.ts';

interface HistoryCardProps {
  readonly deeds: SetDeeds;
  readonly onCorrect: () => void;
}

/** The log in words, slips and reversals and what had no effect included. */
export function HistoryCard({ deeds, onCorrect }: HistoryCardProps) {
  const words = useWords().judge.finished;
  const say = useHistoryWords(deeds.start.sheet, deeds.nameOf);
  const lines = historyLines(deeds.log, deeds.state);
  const { slips, reversals, clashes, attempts } = deeds.state;
  return (
    <section className={styles.history} aria-labelledby="history-title">
      <header className={styles.head}>
        <h2 id="history-title">{words.history.title}</h2>
        {attempts.length === 0 ? null : <Button onClick={onCorrect}>{words.correct.open}</Button>}
      </header>
      <p className={styles.hint}>{words.history.tally(slips, reversals, clashes.length)}</p>
      <details>
        <summary>{words.history.show(lines.length)}</summary>
        <ol className={styles.lines}>
          {lines.map((line) => (
            <li key={line.key} data-withdrawn={line.withdrawn}>
              <span className={styles.time}>{words.clockAt(line.event.at)}</span>
              <span>
                {say(line)}
                {line.withdrawn ? <span className={styles.remark}> {words.history.withdrawnLater}</span> : null}
                {line.clash === null ? null : <span className={styles.remark}> {line.clash}</span>}
              </span>
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}
