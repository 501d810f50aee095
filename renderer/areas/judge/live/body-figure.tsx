import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import styles from './body-figure.module.css';

interface BodyFigureProps {
  readonly movement: StandardSheet['movement'];
  /** Heights that faults break at, 1 overhead to 0 on the floor: each has its knot on the plumb line. */
  readonly heights: readonly number[];
}

/** Drawing units: the floor, the overhead height, and where the plumb line hangs. */
const width = 60;
const height = 200;
const floor = 192;
const overhead = 10;
const plumb = 50;

/** The place of a body height on the drawing, as a share of its height from the top. */
export function shareFromTop(bodyHeight: number): number {
  return (floor - bodyHeight * (floor - overhead)) / height;
}

/** A standing athlete from the side, in strokes, beside the plumb line that the faults hang on. */
export function BodyFigure({ movement, heights }: BodyFigureProps) {
  const armsUp = movement === 'wall-throw';
  return (
    <svg className={styles.figure} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path className={styles.floor} d={`M2 ${floor + 2}H58`} />
      <g className={styles.body}>
        {armsUp ? <circle className={styles.ball} cx="30" cy="17" r="9.5" /> : null}
        <path className={styles.far} d={armsUp ? 'M23 61L31 47L33 28' : 'M23 62L29 84L37 98'} />
        <path className={styles.far} d="M22 104L31 142L29 187L38 188" />
        <path d="M23 60L22 104" />
        <path d="M22 104L24 146L18 187L27 188" />
        <path d={armsUp ? 'M23 61L22 44L27 27' : 'M23 62L19 85L23 105'} />
        <circle className={styles.head} cx="23" cy="45" r="8.5" />
        {movement === 'box-jump-over' ? <path className={styles.thing} d="M34 191V150H47V191" /> : null}
        {movement === 'jump-burpee' ? <path className={styles.thing} d="M42 187V193" /> : null}
      </g>
      <path className={styles.plumb} d={`M${plumb} 6V${floor - 8}`} />
      <path className={styles.bob} d={`M${plumb - 4} ${floor - 9}h8l-4 9z`} />
      {heights.map((item) => (
        <circle key={item} className={styles.knot} cx={plumb} cy={shareFromTop(item) * height} r="2.4" />
      ))}
    </svg>
  );
}
