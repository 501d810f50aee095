import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { SetLine } from '../../../../shared-types/contract/sets.ts';
import { RibbonLine } from '../../../parts/ribbon/ribbon-line.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './set-row.module.css';

/** One set in a list: who, what, how it went, its ribbon. */
export function SetRow({ line, actions }: { line: SetLine; actions?: ReactNode }) {
  const words = useWords().judge;
  const { duration, seconds, date } = useFormats();
  const day = date(line.startedAt ?? line.createdAt);
  const conditions = words.conditions(line.loadKg, line.heightM);
  const about = [line.sheet.station, conditions, line.before === 'fresh' ? '' : words.before[line.before]];
  const asides = [
    day,
    words.sets.judgedBy(line.judge.name),
    line.phase === 'finished' ? '' : words.sets.phases[line.phase],
    line.practice ? words.practice : '',
    ...line.tags,
  ];
  return (
    <li className={styles.row}>
      <div className={styles.who}>
        <Link
          href={`/set/${line.id}`}
          className={styles.open}
          aria-label={words.sets.open(line.athlete.name, line.sheet.station, day)}
        >
          <bdi>{line.athlete.name}</bdi>
        </Link>
        <p className={styles.about}>{about.filter((part) => part !== '').join(', ')}</p>
        <p className={styles.aside}>{asides.filter((part) => part !== '').join(' · ')}</p>
      </div>
      <div className={styles.ribbon}>{line.ribbon === '' ? null : <RibbonLine ribbon={line.ribbon} />}</div>
      <div className={styles.figures}>
        <p className={styles.clock}>{line.startedAt === null ? '' : duration(line.clockMs, 1)}</p>
        <p>{words.sets.result(line.counted, line.noReps)}</p>
        <p className={styles.aside}>
          {line.unexplained > 0 ? words.sets.toExplain(line.unexplained) : null}
          {line.unexplained === 0 && line.noReps > 0
            ? line.costS === null
              ? words.sets.costUnknown
              : words.sets.cost(seconds(line.costS))
            : null}
        </p>
      </div>
      {actions === undefined ? null : <div className={styles.actions}>{actions}</div>}
    </li>
  );
}

/** Sets one below the other. */
export function SetRows({ children }: { children: ReactNode }) {
  return <ul className={styles.rows}>{children}</ul>;
}
