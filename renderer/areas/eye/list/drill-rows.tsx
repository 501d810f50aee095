import { Link } from 'wouter';
import type { DrillLine } from '../../../../shared-types/contract/drills.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './drill-rows.module.css';

/** Drills in a list, each leading to its result, or on with it. */
export function DrillRows({ lines, withJudge }: { lines: readonly DrillLine[]; withJudge?: boolean }) {
  const words = useWords().eye;
  const formats = useFormats();
  return (
    <ul className={styles.rows}>
      {lines.map((line) => (
        <li key={line.id}>
          <Link className={styles.row} href={line.phase === 'ended' ? `/result/${line.id}` : `/drill/${line.id}`}>
            <span className={styles.what}>
              {words.kinds[line.task.kind]}, {line.sheet.station}
            </span>
            <span className={styles.soft}>
              {withJudge ? (
                <>
                  <bdi>{line.judge.name}</bdi>,{' '}
                </>
              ) : null}
              {formats.dateTime(line.createdAt)}
              {line.practice ? `, ${words.home.practice}` : ''}
            </span>
            <span className={styles.figure}>
              {line.phase === 'ended' ? words.home.line(line.right, line.called) : words.home.unfinished}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
