import { area, line } from 'd3-shape';
import type { Axis, Range } from './axis.ts';
import styles from './chart.module.css';
import { Chart, type ChartPoint, type Frame } from './chart.tsx';

/** A value with its interval at a place, all in the units of the axes. */
export interface IntervalPoint extends ChartPoint {
  readonly low: number;
  readonly high: number;
  /** Outside the limits, or worth a second look: drawn open, in the other colour. */
  readonly out?: boolean;
}

/** A fitted curve with its band. */
export interface BandPoint {
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
}

interface CurveProps {
  readonly label: string;
  readonly xLabel: string;
  readonly yLabel: string;
  readonly xAxis: (range: Range) => Axis;
  readonly yAxis: (range: Range) => Axis;
  readonly height?: number;
  readonly hint?: string;
  /** Opens what is behind a point. */
  readonly onPick?: (index: number) => void;
}

interface LineProps extends CurveProps {
  readonly points: readonly IntervalPoint[];
  /** The trend behind the points. */
  readonly band?: readonly BandPoint[];
  /** Control limits: upper and lower at each x. */
  readonly limits?: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  /** Draws the middle of the band too. */
  readonly fitted?: boolean;
}

/** Points over time or place, each with its interval; behind them a fitted band, and control limits, where given. */
export function LineWithIntervals({ points, band = [], limits = [], fitted, ...rest }: LineProps) {
  return (
    <Chart {...rest} points={points}>
      {(frame) => (
        <g clipPath={frame.clip}>
          <Band band={band} frame={frame} />
          {fitted ? <path className={styles.curve} d={stroke(band, frame)} /> : null}
          <path
            className={styles.limit}
            d={stroke(
              limits.map(({ x, high }) => ({ x, y: high })),
              frame,
            )}
          />
          <path
            className={styles.limit}
            d={stroke(
              limits.map(({ x, low }) => ({ x, y: low })),
              frame,
            )}
          />
          <IntervalMarks points={points} frame={frame} />
        </g>
      )}
    </Chart>
  );
}

interface BandCurveProps extends CurveProps {
  readonly band: readonly BandPoint[];
  /** What was seen, behind the curve that was fitted to it. */
  readonly seen?: readonly IntervalPoint[];
  /** A place on the curve in words; the walk goes along the curve. */
  readonly tell: (point: BandPoint) => string;
}

/** A fitted curve with the band of its uncertainty. */
export function BandCurve({ band, seen = [], tell, ...rest }: BandCurveProps) {
  return (
    <Chart {...rest} points={band.map((point) => ({ ...point, text: tell(point) }))}>
      {(frame) => (
        <>
          <Band band={band} frame={frame} />
          <IntervalMarks points={seen} frame={frame} />
          <path className={styles.curve} d={stroke(band, frame)} />
        </>
      )}
    </Chart>
  );
}

function Band({ band, frame }: { band: readonly BandPoint[]; frame: Frame }) {
  const shape = area<BandPoint>()
    .x((point) => frame.x.place(point.x))
    .y0((point) => frame.y.place(point.low))
    .y1((point) => frame.y.place(point.high));
  return <path className={styles.band} d={shape(band) ?? ''} />;
}

/** All points with their intervals, one path for the whiskers and one for the dots of each kind: ten years are many. */
function IntervalMarks({ points, frame }: { points: readonly IntervalPoint[]; frame: Frame }) {
  const room = (frame.right - frame.left) / Math.max(1, points.length);
  const radius = Math.max(1.5, Math.min(5, room / 2.4));
  // Whiskers that touch each other step back behind their dots.
  const fade = Math.max(0.25, Math.min(1, room / 3));
  const kinds = [points.filter((point) => point.out !== true), points.filter((point) => point.out === true)];
  return kinds.map((kind, index) => (
    <g
      key={index === 0 ? 'inside' : 'outside'}
      className={index === 0 ? undefined : styles.out}
      style={{ '--line': `${Math.max(0.75, Math.min(2, radius / 2.5))}px` }}
    >
      <path className={styles.whisker} strokeOpacity={fade} d={kind.map((point) => whisker(point, frame)).join('')} />
      <path className={styles.dot} d={kind.map((point) => dot(point, frame, radius)).join('')} />
    </g>
  ));
}

function whisker({ x, low, high }: IntervalPoint, { x: across, y }: Frame): string {
  return `M${round(across.place(x))} ${round(y.place(low))}V${round(y.place(high))}`;
}

/** A dot; beyond the axis an arrow head at its edge, so that nothing is lost from sight. */
function dot({ x, y }: IntervalPoint, frame: Frame, radius: number): string {
  const [left, top] = [round(frame.x.place(x) - radius), frame.y.place(y)];
  const wide = round(2 * radius);
  if (top < frame.top) return `M${left} ${frame.top + wide}h${wide}l${-radius} ${-wide}Z`;
  return `M${left} ${round(top)}a${round(radius)} ${round(radius)} 0 1 0 ${wide} 0a${round(radius)} ${round(radius)} 0 1 0 ${-wide} 0`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function stroke(points: readonly { readonly x: number; readonly y: number }[], frame: Frame): string {
  const shape = line<{ readonly x: number; readonly y: number }>()
    .x((point) => frame.x.place(point.x))
    .y((point) => frame.y.place(point.y));
  return shape(points) ?? '';
}
