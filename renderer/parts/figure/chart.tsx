import { type PointerEvent, type ReactNode, useId } from 'react';
import { classNames } from '../look/class-names.ts';
import type { Axis, Range } from './axis.ts';
import styles from './chart.module.css';
import { useWalk } from './use-walk.ts';
import { useSize } from './use-width.ts';

export interface Frame {
  readonly x: Axis;
  readonly y: Axis;
  /** The drawing's field, in pixels. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** The point under the pointer or the keyboard's place; -1 with none. */
  readonly place: number;
  /** A clip of the field, for marks that reach beyond the axis. */
  readonly clip: string;
}

export interface ChartPoint {
  /** In the units of the axes. */
  readonly x: number;
  readonly y: number;
  /** The point in words, with its values and units. */
  readonly text: string;
}

interface ChartProps {
  /** What is drawn, in a sentence, for those who do not see it. */
  readonly label: string;
  /** What the axes measure, with units. */
  readonly xLabel: string;
  readonly yLabel: string;
  readonly xAxis: (range: Range) => Axis;
  readonly yAxis: (range: Range) => Axis;
  readonly height?: number;
  /** The points to walk through, by pointer or by arrow keys, in the order of x. */
  readonly points: readonly ChartPoint[];
  /** What stands under the drawing while no point is looked at. */
  readonly hint?: string;
  /** Opens what is behind a point: by a press on it, or by Enter. */
  readonly onPick?: (index: number) => void;
  readonly children: (frame: Frame) => ReactNode;
}

const margin = { left: 58, right: 22, top: 26, bottom: 46 };
/** Beyond this many points only the one looked at is an element of its own; the others are strokes of one path. */
const mostElements = 150;

/** The frame that all charts share: axes with units, values by pointer and by keyboard, both looks, printable. */
export function Chart(props: ChartProps) {
  const { label, xLabel, yLabel, xAxis, yAxis, height: wanted = 280, points, hint, onPick, children } = props;
  const clip = useId();
  const [box, { width, height }] = useSize<HTMLDivElement>(640, wanted);
  const walk = useWalk(points.length, onPick);
  const [left, right, top, bottom] = [margin.left, width - margin.right, margin.top, height - margin.bottom];
  const x = xAxis([left, right]);
  const y = yAxis([bottom, top]);
  const nearest = (event: PointerEvent<SVGSVGElement>): number => {
    const bounds = event.currentTarget.getBoundingClientRect();
    const at = ((event.clientX - bounds.left) / bounds.width) * width;
    const distances = points.map((point) => Math.abs(x.place(point.x) - at));
    return distances.indexOf(Math.min(...distances));
  };
  const held = points[walk.place];
  const few = points.length <= mostElements;
  const elements = points
    .map((point, index) => ({ point, index }))
    .filter(({ index }) => few || index === Math.max(0, walk.place));
  return (
    <div ref={box} className={styles.box}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keys that answer to the press come with the walk. */}
      <svg
        {...walk.list}
        className={classNames(styles.chart, onPick !== undefined && styles.pickable)}
        viewBox={`0 0 ${width} ${height}`}
        aria-label={label}
        onPointerMove={(event) => walk.setPlace(nearest(event))}
        onClick={() => (walk.place === -1 ? undefined : onPick?.(walk.place))}
      >
        <clipPath id={clip}>
          <rect x={left - 8} y={top} width={Math.max(0, right - left + 16)} height={Math.max(0, bottom - top + 8)} />
        </clipPath>
        {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in this group takes the focus; the points say it all. */}
        <g aria-hidden="true">
          <rect width={width} height={height} fill="transparent" />
          {y.ticks.map((tick) => (
            <g key={tick.text}>
              <line className={styles.grid} x1={left} x2={right} y1={tick.at} y2={tick.at} />
              <text className={styles.tick} x={left - 8} y={tick.at} dy="0.35em" textAnchor="end">
                {tick.text}
              </text>
            </g>
          ))}
          {x.ticks.map((tick) => (
            <text key={tick.text} className={styles.tick} x={tick.at} y={bottom + 18} textAnchor="middle">
              {tick.text}
            </text>
          ))}
          <text className={styles.axis} x={0} y={12}>
            {yLabel}
          </text>
          <text className={styles.axis} x={right} y={height - 6} textAnchor="end">
            {xLabel}
          </text>
          {children({ x, y, left, right, top, bottom, place: walk.place, clip: `url(#${clip})` })}
          {held === undefined ? null : (
            <line className={styles.cursor} x1={x.place(held.x)} x2={x.place(held.x)} y1={top} y2={bottom} />
          )}
        </g>
        {elements.map(({ point, index }) => (
          <circle
            key={index}
            {...walk.option(index)}
            {...(few ? {} : { 'aria-setsize': points.length, 'aria-posinset': index + 1 })}
            aria-label={point.text}
            className={index === walk.place ? styles.held : styles.point}
            cx={x.place(point.x)}
            cy={Math.max(top, y.place(point.y))}
            r={9}
          />
        ))}
      </svg>
      <p className={styles.readout} aria-hidden="true">
        {held?.text ?? hint}
      </p>
    </div>
  );
}
