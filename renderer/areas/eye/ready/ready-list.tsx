import { Link } from 'wouter';
import type { ReadyLine } from '../../../../shared-types/contract/drills.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './ready-list.module.css';
import { useVerdictText } from './use-verdict-text.ts';

/** A judge and a station a line, with what each fault still lacks. */
export function ReadyList({ lines }: { lines: readonly ReadyLine[] }) {
  const words = useWords().eye.ready;
  const { date } = useFormats();
  const verdictText = useVerdictText();
  return (
    <ul className={styles.lines}>
      {lines.map((line) => (
        <li key={`${line.judge.id} ${line.sheet.id}`} className={styles.line} data-ready={line.ready}>
          <p className={styles.head}>
            <Link
              href={`/judge/${line.judge.id}/${line.sheet.id}`}
              aria-label={words.history(line.judge.name, line.sheet.station)}
            >
              <bdi>{line.judge.name}</bdi>, {line.sheet.station}
            </Link>
            <strong>{line.ready ? words.ready : words.notReady}</strong>
          </p>
          <p className={styles.soft}>
            {words.trials(line.trials)}
            {line.lastAt === null ? '' : `, ${words.last(date(line.lastAt))}`}
          </p>
          <ul className={styles.faults}>
            {line.faults.map((fault) => (
              <li key={fault.code}>
                {fault.name}: <span className={styles.soft}>{verdictText(fault.verdict)}</span>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
