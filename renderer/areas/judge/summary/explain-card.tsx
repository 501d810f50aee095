import { refKey } from '../../../../shared-types/log/events.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './explain-card.module.css';
import type { SetDeeds } from './set-deeds.ts';

/** The no-reps that still lack their fault, each explained by one press. */
export function ExplainCard({ deeds }: { deeds: SetDeeds }) {
  const words = useWords().judge.finished;
  const standing = deeds.state.attempts.filter((attempt) => !attempt.withdrawn);
  const open = standing
    .map((attempt, index) => ({ attempt, number: index + 1 }))
    .filter(({ attempt }) => attempt.verdict === 'no-rep' && attempt.faults.length === 0);
  if (open.length === 0) return null;
  return (
    <section className={styles.card} aria-labelledby="explain-title">
      <h2 id="explain-title">{words.explain.title(open.length)}</h2>
      <ul className={styles.list}>
        {open.map(({ attempt, number }) => (
          <li key={refKey(attempt.ref)} className={styles.item}>
            <p>{words.explain.attempt(number, words.clockAt(attempt.at))}</p>
            <div className={styles.faults}>
              {deeds.start.sheet.faults.map((fault) => (
                <Button
                  key={fault.code}
                  onClick={() =>
                    deeds.write([{ kind: 'explain', at: deeds.now(), of: attempt.ref, faults: [fault.code] }])
                  }
                >
                  {fault.name}
                </Button>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
