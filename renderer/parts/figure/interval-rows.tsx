import { classNames } from '../look/class-names.ts';
import { type Axis, numberAxis } from './axis.ts';
import styles from './interval-rows.module.css';
import { useWidth } from './use-width.ts';

export interface IntervalRow {
  readonly key: string;
  readonly name: string;
  readonly remark?: string;
  /** Value and interval, all in one unit; null where it cannot be told, which `text` then says. */
  readonly value: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly text: string;
  /** Surely on one side of zero: drawn open, in the other colour. */
  readonly apart?: boolean;
}

interface IntervalRowsProps {
  readonly rows: readonly IntervalRow[];
  readonly label: string;
  /** What the scale under the rows measures, with its unit. */
  readonly scaleLabel: string;
  readonly tick: (value: number) => string;
}

const height = 20;
const edge = 14;

/** Values that may lie on either side of zero, a row each: a point and its interval over one scale. */
export function IntervalRows({ rows, label, scaleLabel, tick }: IntervalRowsProps) {
  const [box, width] = useWidth<HTMLDivElement>(480);
  const ends = rows.flatMap(({ value }) => (value === null ? [] : [value.low, value.high]));
  const count = width < 400 ? 3 : 5;
  const axis = numberAxis(ends, [edge, width - edge], tick, { fromZero: true, count });
  const seen = rows.some((row) => row.value !== null);
  return (
    <div ref={box}>
      <ul className={styles.list} aria-label={label}>
        {rows.map((row) => (
          <li key={row.key} className={styles.item}>
            <p className={styles.head}>
              <span className={styles.name}>{row.name}</span>
              {row.value === null ? null : <span className={styles.value}>{row.text}</span>}
              {row.remark === undefined ? null : <span className={styles.remark}>{row.remark}</span>}
            </p>
            {row.value === null ? (
              <p className={styles.remark}>{row.text}</p>
            ) : (
              <Row row={row} axis={axis} wide={width} />
            )}
          </li>
        ))}
      </ul>
      {seen ? (
        <>
          <svg className={styles.scale} viewBox={`0 0 ${width} 20`} aria-hidden="true">
            {axis.ticks.map((mark) => (
              <text key={mark.text} className={styles.tick} x={mark.at} y={14} textAnchor="middle">
                {mark.text}
              </text>
            ))}
          </svg>
          <p className={styles.scaleLabel}>{scaleLabel}</p>
        </>
      ) : null}
    </div>
  );
}

function Row({ row, axis, wide }: { row: IntervalRow; axis: Axis; wide: number }) {
  const { value } = row;
  if (value === null) return null;
  const middle = height / 2;
  return (
    <svg className={styles.row} viewBox={`0 0 ${wide} ${height}`} aria-hidden="true">
      {axis.ticks.map((mark) => (
        <line key={mark.text} className={styles.grid} x1={mark.at} x2={mark.at} y1={0} y2={height} />
      ))}
      <line className={styles.zero} x1={axis.place(0)} x2={axis.place(0)} y1={0} y2={height} />
      <g className={classNames(row.apart && styles.apart)}>
        <line
          className={styles.whisker}
          x1={axis.place(value.low)}
          x2={axis.place(value.high)}
          y1={middle}
          y2={middle}
        />
        <circle className={styles.dot} cx={axis.place(value.value)} cy={middle} r={5} />
      </g>
    </svg>
  );
}
