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
}

interface LineProps extends CurveProps {
  readonly points: readonly IntervalPoint[];
  /** The trend behind the points. */
  readonly band?: readonly BandPoint[];
  /** Control limits: upper and lower at each x. */
  readonly limits?: readonly { readonly x: number; readonly low: number; readonly high: number }[];
}

/** Points over time or place, each with its interval; behind them a fitted band, and control limits, where given. */
export function LineWithIntervals({ points, band = [], limits = [], ...rest }: LineProps) {
  return (
    <Chart {...rest} points={points}>
      {(frame) => (
        <>
          <Band band={band} frame={frame} />
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
          {points.map((point) => (
            <IntervalMark key={point.text} point={point} frame={frame} />
          ))}
        </>
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
          {seen.map((point) => (
            <IntervalMark key={point.text} point={point} frame={frame} />
          ))}
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

function IntervalMark({ point, frame }: { point: IntervalPoint; frame: Frame }) {
  const x = frame.x.place(point.x);
  return (
    <g className={point.out ? styles.out : undefined}>
      <line className={styles.whisker} x1={x} x2={x} y1={frame.y.place(point.low)} y2={frame.y.place(point.high)} />
      <circle className={styles.dot} cx={x} cy={frame.y.place(point.y)} r={5} />
    </g>
  );
}

function stroke(points: readonly { readonly x: number; readonly y: number }[], frame: Frame): string {
  const shape = line<{ readonly x: number; readonly y: number }>()
    .x((point) => frame.x.place(point.x))
    .y((point) => frame.y.place(point.y));
  return shape(points) ?? '';
}
