import { type KeyboardEvent, type PointerEvent, type ReactNode, useId, useState } from 'react';
import { classNames } from '../look/class-names.ts';
import type { Axis, Range } from './axis.ts';
import styles from './rows-chart.module.css';
import { nextPlace, type RowPlace } from './rows-walk.ts';

import { useSize } from './use-width.ts';

export interface ChartRow {
  readonly key: string;
  /** Before the row, such as a date. */
  readonly name: string;
  /** Behind the row. */
  readonly end?: string;
  /** The row in words, with its values and units. */
  readonly text: string;
}

export interface RowsFrame {
  /** The drawing's field, CSS pixels. */
  readonly left: number;
  readonly right: number;
  readonly rowHeight: number;
  /** Top of a row. */
  readonly topOf: (row: number) => number;
  readonly x: Axis;
}

interface RowsChartProps {
  /** What is drawn, in a sentence. */
  readonly label: string;
  readonly rows: readonly ChartRow[];
  readonly rowHeight: number;
  readonly xLabel: string;
  readonly xAxis: (range: Range) => Axis;
  /** Width of the texts behind the rows, CSS pixels. */
  readonly endWidth?: number;
  readonly hint: string;
  /** Marks within the rows: how many, what each says, and which lies at a place of the scale. */
  readonly marks?: {
    readonly count: (row: number) => number;
    readonly text: (row: number, mark: number) => string;
    readonly at: (row: number, x: number, frame: RowsFrame) => number;
    readonly x: (row: number, mark: number, frame: RowsFrame) => number;
  };
  readonly onPick?: (row: number) => void;
  readonly children: (frame: RowsFrame) => ReactNode;
}

/** A letter of a name, on average, CSS pixels. */
const letterWidth = 7.2;
const foot = 40;
const gap = 3;

/** Many things of one kind, a row each, over one scale: the frame, the values by pointer and by keyboard. */
export function RowsChart(props: RowsChartProps) {
  const { label, rows, rowHeight: wanted, xLabel, xAxis, endWidth = 12, hint, marks, onPick, children } = props;
  const id = useId();
  const [box, { width, height }] = useSize<HTMLDivElement>(640, rows.length * (wanted + gap) + foot);
  // On paper the rows share the height that the page gives.
  const rowHeight = Math.min(wanted, Math.max(1, (height - foot) / Math.max(1, rows.length) - gap));
  const [held, setHeld] = useState<RowPlace>({ row: -1, mark: -1 });
  const place: RowPlace = held.row < rows.length ? held : { row: -1, mark: -1 };
  const nameWidth = 12 + letterWidth * rows.reduce((longest, row) => Math.max(longest, row.name.length), 4);
  const [left, right] = [nameWidth, Math.max(nameWidth + 40, width - endWidth)];
  const frame: RowsFrame = {
    left,
    right,
    rowHeight,
    topOf: (row) => row * (rowHeight + gap),
    x: xAxis([left, right]),
  };
  const bottom = frame.topOf(rows.length);
  const point = (event: PointerEvent<SVGSVGElement>): void => {
    const bounds = event.currentTarget.getBoundingClientRect();
    const scale = width / bounds.width;
    const row = Math.floor(((event.clientY - bounds.top) * scale) / (rowHeight + gap));
    if (row < 0 || row >= rows.length) setHeld({ row: -1, mark: -1 });
    else setHeld({ row, mark: marks?.at(row, (event.clientX - bounds.left) * scale, frame) ?? -1 });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const next = nextPlace(event.key, place, rows.length, marks?.count ?? (() => 0));
    if (next !== null) {
      event.preventDefault();
      setHeld(next);
    } else if (event.key === 'Enter' && place.row !== -1 && onPick !== undefined) {
      event.preventDefault();
      onPick(place.row);
    }
  };
  const markText = place.mark === -1 ? undefined : marks?.text(place.row, place.mark);
  const shown = markText ?? rows[place.row]?.text;
  const active = place.row === -1 ? undefined : markText === undefined ? `${id}-${place.row}` : `${id}-mark`;
  const list = {
    role: 'listbox',
    tabIndex: 0,
    'aria-activedescendant': active,
    onKeyDown,
    onBlur: () => setHeld({ row: -1, mark: -1 }),
  } as const;
  return (
    <div ref={box} className={styles.box}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: Enter answers as the press does. */}
      <svg
        {...list}
        aria-label={label}
        className={classNames(styles.chart, onPick !== undefined && styles.pickable)}
        viewBox={`0 0 ${width} ${bottom + foot}`}
        onPointerMove={point}
        onPointerLeave={() => setHeld({ row: -1, mark: -1 })}
        onClick={() => (place.row === -1 ? undefined : onPick?.(place.row))}
      >
        {rows.map((row, index) => (
          <rect
            key={row.key}
            id={`${id}-${index}`}
            role="option"
            aria-selected={index === place.row}
            aria-label={row.text}
            className={index === place.row ? styles.held : styles.row}
            x={0}
            y={frame.topOf(index) - gap / 2}
            width={width}
            height={rowHeight + gap}
          />
        ))}
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in this group takes the focus; the rows say it all. */}
        <g aria-hidden="true">
          {frame.x.ticks.map((tick) => (
            <g key={tick.text}>
              <line className={styles.grid} x1={tick.at} x2={tick.at} y1={0} y2={bottom} />
              <text className={styles.tick} x={tick.at} y={bottom + 14} textAnchor="middle">
                {tick.text}
              </text>
            </g>
          ))}
          <text className={styles.tick} x={right} y={bottom + 34} textAnchor="end">
            {xLabel}
          </text>
          {rows.map((row, index) => (
            <text key={row.key} className={styles.name} x={0} y={frame.topOf(index) + rowHeight / 2} dy="0.35em">
              {row.name}
            </text>
          ))}
          {rows.map((row, index) =>
            row.end === undefined ? null : (
              <text
                key={row.key}
                className={styles.end}
                x={width}
                y={frame.topOf(index) + rowHeight / 2}
                dy="0.35em"
                textAnchor="end"
              >
                {row.end}
              </text>
            ),
          )}
          {children(frame)}
        </g>
        {markText === undefined ? null : (
          <circle
            id={`${id}-mark`}
            role="option"
            aria-selected
            aria-label={markText}
            cx={marks?.x(place.row, place.mark, frame) ?? 0}
            cy={frame.topOf(place.row) + rowHeight / 2}
            r={rowHeight / 2 + 1}
            fill="none"
            stroke="var(--ink)"
            strokeWidth={1.5}
          />
        )}
      </svg>
      <p className={styles.readout} aria-hidden="true">
        {shown ?? hint}
      </p>
    </div>
  );
}
