import { useState } from 'react';
import type { Reason, Reasons } from '../../../../shared-types/contract/review/figures.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { IntervalBars } from '../../../parts/figure/interval-bars.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { Evidence } from '../view/evidence.tsx';
import { SetLinks } from '../view/set-links.tsx';
import styles from './reasons-figure.module.css';

interface ReasonsFigureProps {
  readonly reasons: Reasons;
  readonly repsName: string;
  /** The day of a set that the view knows. */
  readonly dayOf: (id: string) => string | undefined;
  /** The station's name before a reason's, where several stations are mixed. */
  readonly stationOf?: (sheet: string) => string;
}

const shownFirst = 6;

/** What the no-reps were for, in the order of the time they take. */
export function ReasonsFigure({ reasons, repsName, dayOf, stationOf }: ReasonsFigureProps) {
  const words = useWords().review;
  const { number, plain, percent, seconds } = useFormats();
  const [all, setAll] = useState(false);
  const figure = words.figures.reasons;
  const { lines, intervals } = reasons;
  const nameOf = (line: Reason): string => {
    const name = line.code === '' ? figure.unexplained : line.name === '' ? line.code : line.name;
    return stationOf === undefined ? name : `${name} · ${stationOf(line.sheet)}`;
  };
  const shown = all ? lines : lines.slice(0, shownFirst);
  return (
    <Evidence
      title={figure.title(repsName)}
      size="slim"
      how={[...words.how.reasons.base, ...(intervals === null ? [] : [words.how.reasons[intervals]])]}
      testId="figure-reasons"
      table={{
        columns: [
          { key: 'reason', head: figure.columns.reason, cell: nameOf },
          { key: 'noReps', head: figure.columns.noReps, figures: true, cell: (line) => plain(line.noReps) },
          { key: 'share', head: figure.columns.share, figures: true, cell: (line) => percent(line.share) },
          {
            key: 'lost',
            head: figure.columns.lost,
            figures: true,
            cell: (line) => (line.per100S === null ? figure.unknown : words.figures.secondsOf(line.per100S)),
          },
          { key: 'sets', head: figure.columns.sets, figures: true, cell: (line) => number(line.sets) },
        ],
        rows: lines,
        rowKey: (line) => `${line.sheet} ${line.code}`,
      }}
    >
      {lines.length === 0 ? <p>{figure.none}</p> : null}
      <IntervalBars
        label={figure.title(repsName)}
        scale={{ label: figure.axis, tick: plain }}
        bars={shown.map((line) => ({
          key: `${line.sheet} ${line.code}`,
          name: nameOf(line),
          remark: figure.remark(line.noReps, line.share),
          value: line.per100S,
          text: line.per100S === null ? figure.unknown : seconds(line.per100S.value),
        }))}
      />
      {lines.length > shownFirst ? (
        <div className="no-print">
          <Button weight="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? figure.fewer : figure.more(lines.length - shownFirst)}
          </Button>
        </div>
      ) : null}
      {lines.length === 0 ? null : (
        <details className={styles.behind}>
          <summary>{figure.sets}</summary>
          <dl>
            {shown.map((line) => (
              <div key={`${line.sheet} ${line.code}`}>
                <dt>{nameOf(line)}</dt>
                <dd>
                  <SetLinks sets={line.latest.map((id, index) => ({ id, text: dayOf(id) ?? figure.nth(index + 1) }))} />
                </dd>
              </div>
            ))}
          </dl>
        </details>
      )}
    </Evidence>
  );
}
