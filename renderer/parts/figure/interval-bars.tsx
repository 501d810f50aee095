import { numberAxis } from './axis.ts';
import styles from './interval-bars.module.css';
import { useWidth } from './use-width.ts';

export interface IntervalBar {
  readonly key: string;
  readonly name: string;
  /** A remark at the end of the name's line, such as how many there were. */
  readonly remark?: string;
  /** Value and interval, all in one unit; null where it cannot be estimated, which `text` then says. */
  readonly value: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly text: string;
}

const height = 18;

interface IntervalBarsProps {
  readonly bars: readonly IntervalBar[];
  readonly label: string;
  /** A scale under the bars: what it measures, with its unit, and its texts. */
  readonly scale?: { readonly label: string; readonly tick: (value: number) => string };
}

/** One bar a thing, longest matter first as given; the line over its end is its interval. */
export function IntervalBars({ bars, label, scale }: IntervalBarsProps) {
  const [box, width] = useWidth<HTMLDivElement>(480);
  const ends = bars.flatMap(({ value }) => (value === null ? [] : [value.value, value.low, value.high]));
  // Room for the value's text behind the longest interval.
  const axis = numberAxis(ends, [0, Math.max(60, width - 96)], scale?.tick ?? String, { fromZero: true, count: 4 });
  return (
    <div ref={box} className={styles.box}>
      <ul className={styles.list} aria-label={label}>
        {bars.map(({ key, name, remark, value, text }) => (
          <li key={key} className={styles.item}>
            <p className={styles.head}>
              <span className={styles.name}>{name}</span>
              {remark === undefined ? null : <span className={styles.remark}>{remark}</span>}
            </p>
            {value === null ? (
              <p className={styles.remark}>{text}</p>
            ) : (
              <svg className={styles.bar} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={text}>
                <rect
                  className={styles.value}
                  x={Math.min(axis.place(0), axis.place(value.value)) + 1}
                  y={3}
                  width={Math.max(1, Math.abs(axis.place(value.value) - axis.place(0)))}
                  height={height - 6}
                />
                <path
                  className={styles.interval}
                  d={`M${axis.place(value.low)} ${height / 2}H${axis.place(value.high)}M${axis.place(value.low)} ${height / 2 - 4}v8M${axis.place(value.high)} ${height / 2 - 4}v8`}
                />
                <text
                  className={styles.text}
                  x={Math.max(axis.place(value.high), axis.place(value.value)) + 10}
                  y={height / 2}
                  dy="0.35em"
                >
                  {text}
                </text>
              </svg>
            )}
          </li>
        ))}
      </ul>
      {scale === undefined || ends.length === 0 ? null : (
        <svg className={styles.scale} viewBox={`0 0 ${width} 40`} aria-hidden="true">
          {axis.ticks.map((mark, index) => (
            <text
              key={mark.text}
              className={styles.tick}
              x={mark.at}
              y={14}
              textAnchor={index === 0 ? 'start' : 'middle'}
            >
              {mark.text}
            </text>
          ))}
          <text className={styles.tick} x={0} y={34}>
            {scale.label}
          </text>
        </svg>
      )}
    </div>
  );
}
