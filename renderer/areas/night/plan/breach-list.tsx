import type { Breach } from '../../../../shared-types/night/breach.ts';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './plan.module.css';

/** What a plan breaks, hard rules first. */
export function BreachList({ breaches }: { breaches: readonly Breach[] }) {
  const words = useWords().night.plan;
  const hard = breaches.filter(({ aim }) => !aim);
  const aims = breaches.filter(({ aim }) => aim);
  return (
    <div className={styles.breaches}>
      <div role="status">
        {hard.length === 0 ? (
          <p className={styles.kept}>{words.kept}</p>
        ) : (
          <div className={styles.broken} data-testid="breaches">
            <h2>{words.breachesTitle(hard.length)}</h2>
            <Messages breaches={hard} />
          </div>
        )}
      </div>
      {aims.length === 0 ? null : (
        <details className="no-print">
          <summary>{words.aimsTitle}</summary>
          <Messages breaches={aims} />
        </details>
      )}
    </div>
  );
}

function Messages({ breaches }: { breaches: readonly Breach[] }) {
  const messages = [...new Set(breaches.map(({ message }) => message))];
  return (
    <ul>
      {messages.map((message) => (
        <li key={message}>{message}</li>
      ))}
    </ul>
  );
}
