import type { ReactNode } from 'react';
import type { SetReport } from '../../../../shared-types/contract/reports.ts';
import type { Goal } from '../../../../shared-types/log/setup.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './key-figures.module.css';

/** The few figures of a set, large; each with its interval where it has one. */
export function KeyFigures({ report, goal }: { report: SetReport; goal: Goal }) {
  const words = useWords().judge.finished;
  const { number, duration, seconds } = useFormats();
  const { counts, rate, cost } = report;
  const added = report.resultMs - report.clockMs;
  return (
    <dl className={styles.figures}>
      <Figure name={added > 0 ? words.result : words.time} value={duration(report.resultMs, 1)} testId="time">
        {added > 0 ? words.resultWith(duration(report.clockMs, 1), seconds(added / 1000, 0)) : null}
      </Figure>
      {counts.metres > 0 || goal.kind === 'metres' ? (
        <Figure name={words.metres} value={words.reached(counts.metres)} testId="metres" />
      ) : null}
      <Figure name={words.counted} value={number(counts.counted)} testId="counted">
        {counts.cautions > 0 ? words.cautions(counts.cautions) : null}
      </Figure>
      <Figure name={words.noReps} value={number(counts.noReps)} accent testId="no-reps">
        {rate === null ? null : words.rate(rate.value, rate.low, rate.high)}
      </Figure>
      {counts.noReps === 0 ? null : (
        <Figure
          name={words.cost}
          value={cost.total === null ? words.notEstimable : seconds(cost.total.value)}
          accent
          small={cost.total === null}
          testId="cost"
        >
          {cost.total === null ? (
            words.notEstimableWhy
          ) : (
            <>
              {words.costWithin(cost.total.low, cost.total.high)}
              {cost.repsLost === null ? null : (
                <>
                  <br />
                  {words.repsLost(cost.repsLost.value, cost.repsLost.low, cost.repsLost.high)}
                </>
              )}
            </>
          )}
        </Figure>
      )}
    </dl>
  );
}

interface FigureProps {
  readonly name: string;
  readonly value: string;
  readonly accent?: boolean;
  /** Words in place of a figure: they need not be as large. */
  readonly small?: boolean;
  readonly testId: string;
  readonly children?: ReactNode;
}

function Figure({ name, value, accent, small, testId, children }: FigureProps) {
  return (
    <div className={styles.figure} data-testid={`figure-${testId}`}>
      <dt>{name}</dt>
      <dd className={styles.value} data-accent={accent === true} data-small={small === true}>
        {value}
      </dd>
      {children === undefined || children === null ? null : <dd className={styles.note}>{children}</dd>}
    </div>
  );
}
