import { useId } from 'react';
import { useFormats, useWords } from '../words/words.tsx';
import styles from './ledger-bar.module.css';
import { useWidth } from './use-width.ts';

/** Whole milliseconds of each line; together the set's clock. */
export interface Ledger {
  readonly startMs: number;
  readonly workMs: number;
  readonly noRepMs: number;
  readonly breakMs: number;
}

const lines = ['work', 'noRep', 'break', 'start'] as const;
type Line = (typeof lines)[number];

interface LedgerBarProps {
  readonly ledger: Ledger;
  /** The clock of the longest bar beside it, for bars to be compared; its own clock otherwise. */
  readonly longestMs?: number;
  /** Without the key below: where several bars share one. */
  readonly bare?: boolean;
}

const height = 28;

/** Where the clock went: work filled, no-reps outlined and hatched, breaks grey, the start open. */
export function LedgerBar({ ledger, longestMs, bare }: LedgerBarProps) {
  const words = useWords().ledger;
  const formats = useFormats();
  const [box, width] = useWidth<HTMLDivElement>(640);
  const hatch = useId();
  const spent: Readonly<Record<Line, number>> = {
    work: ledger.workMs,
    noRep: ledger.noRepMs,
    break: ledger.breakMs,
    start: ledger.startMs,
  };
  const clock = lines.reduce((sum, line) => sum + spent[line], 0);
  const scale = width / Math.max(1, longestMs ?? clock);
  const share = (line: Line): string => formats.percent(clock === 0 ? 0 : spent[line] / clock);
  let x = 0;
  return (
    <div ref={box} className={styles.box}>
      <svg
        className={styles.bar}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={words.summary(
          formats.duration(clock),
          lines.map((line) => `${words[line]} ${formats.duration(spent[line])}`),
        )}
      >
        <Hatch id={hatch} />
        {lines.map((line) => {
          const wide = spent[line] * scale;
          const left = x;
          x += wide;
          return wide < 0.5 ? null : <Segment key={line} line={line} x={left} width={wide} hatch={hatch} />;
        })}
      </svg>
      {bare ? null : (
        <dl className={styles.key}>
          {lines.map((line) => (
            <div key={line} className={styles.entry}>
              <dt>
                <svg className={styles.sample} viewBox="0 0 22 14" width="22" height="14" aria-hidden="true">
                  <Segment line={line} x={0} width={22} tall={14} hatch={hatch} />
                </svg>
                {words[line]}
              </dt>
              <dd>
                <span className="number">{formats.duration(spent[line])}</span> <span>{share(line)}</span>
              </dd>
            </div>
          ))}
        </dl>
      )}
    </div>
  );
}

function Hatch({ id }: { id: string }) {
  return (
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line className={styles.hatch} x1="1" x2="1" y1="0" y2="6" />
    </pattern>
  );
}

interface SegmentProps {
  readonly line: Line;
  readonly x: number;
  readonly width: number;
  readonly tall?: number;
  readonly hatch: string;
}

function Segment({ line, x, width, tall = height, hatch }: SegmentProps) {
  const shape = { x: x + 1, y: 1, width: Math.max(0.5, width - 2), height: tall - 2, className: styles[line] };
  return line === 'noRep' ? (
    <>
      <rect {...shape} className={undefined} fill={`url(#${hatch})`} />
      <rect {...shape} />
    </>
  ) : (
    <rect {...shape} />
  );
}
