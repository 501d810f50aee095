import { useId } from 'react';
import { useFormats, useWords } from '../words/words.tsx';
import { numberAxis } from './axis.ts';
import styles from './ledger-bar.module.css';
import type { Ledger } from './ledger-bar.tsx';
import { RowsChart } from './rows-chart.tsx';

export interface LedgerRow {
  readonly key: string;
  readonly name: string;
  readonly ledger: Ledger;
}

const order = ['work', 'noRep', 'break', 'start'] as const;
const rowHeight = 20;

interface LedgerRowsProps {
  readonly rows: readonly LedgerRow[];
  readonly label: string;
  readonly onPick?: (row: number) => void;
}

/** The time ledgers of many sets over one clock: work filled, no-reps outlined and hatched, breaks grey, the start open. */
export function LedgerRows({ rows, label, onPick }: LedgerRowsProps) {
  const words = useWords().ledger;
  const formats = useFormats();
  const hatch = useId();
  const clocks = rows.map(({ ledger }) => ledger.workMs + ledger.noRepMs + ledger.breakMs + ledger.startMs);
  const parts = ({ ledger }: LedgerRow) =>
    [
      ['work', ledger.workMs],
      ['noRep', ledger.noRepMs],
      ['break', ledger.breakMs],
      ['start', ledger.startMs],
    ] as const;
  return (
    <div className={styles.box}>
      <RowsChart
        label={label}
        rows={rows.map((row, index) => ({
          key: row.key,
          name: row.name,
          end: formats.duration(clocks[index] ?? 0, 0),
          text: words.row(
            row.name,
            formats.duration(clocks[index] ?? 0),
            parts(row).map(([line, spent]) => `${words[line]} ${formats.duration(spent)}`),
          ),
        }))}
        rowHeight={rowHeight}
        endWidth={52}
        xLabel={words.axis}
        xAxis={(range) =>
          numberAxis(
            clocks.map((clock) => clock / 60_000),
            range,
            (minutes) => formats.duration(Math.round(minutes * 60_000), 0),
            { fromZero: true, count: 4 },
          )
        }
        hint={words.rowsHint}
        {...(onPick === undefined ? {} : { onPick })}
      >
        {({ x, topOf, rowHeight: tall }) => (
          <>
            <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line className={styles.hatch} x1="1" x2="1" y1="0" y2="6" />
            </pattern>
            {rows.map((row, index) => {
              let spent = 0;
              return parts(row).map(([line, milliseconds]) => {
                const from = x.place(spent / 60_000);
                spent += milliseconds;
                const wide = x.place(spent / 60_000) - from;
                if (wide < 0.5) return null;
                const shape = {
                  x: from + 0.5,
                  y: topOf(index) + 1,
                  width: Math.max(0.5, wide - 1.5),
                  height: Math.max(1, tall - 2),
                };
                return (
                  <g key={`${row.key} ${line}`}>
                    {line === 'noRep' ? <rect {...shape} fill={`url(#${hatch})`} /> : null}
                    <rect {...shape} className={styles[line]} />
                  </g>
                );
              });
            })}
          </>
        )}
      </RowsChart>
      <ul className={styles.legend}>
        {order.map((line) => (
          <li key={line}>
            <svg className={styles.sample} viewBox="0 0 22 14" width="22" height="14" aria-hidden="true">
              {line === 'noRep' ? <rect x="1" y="1" width="20" height="12" fill={`url(#${hatch})`} /> : null}
              <rect x="1" y="1" width="20" height="12" className={styles[line]} />
            </svg>
            {words[line]}
          </li>
        ))}
      </ul>
    </div>
  );
}
