import { useWords } from '../words/words.tsx';
import styles from './ribbon.module.css';

const pitch = 5;
const bar = 3.6;
const high = 22;
/** Short ribbons are not stretched over the whole line. */
const fewestSlots = 60;

/**
 * The three drawings of a compact ribbon, one path for all marks of a kind. `slots` is its width in marks.
 * @internal exported for its test, which asks it directly
 */
export function lineParts(ribbon: string): { counted: string; noReps: string; noRepCount: number; slots: number } {
  let counted = '';
  let noReps = '';
  let noRepCount = 0;
  const signs = Array.from(ribbon);
  for (const [index, sign] of signs.entries()) {
    const x = Math.round((index * pitch + (pitch - bar) / 2) * 10) / 10;
    if (sign === '.') {
      counted += `M${x} ${high}V9h${bar}V${high}Z`;
    } else if (sign === '!') {
      counted += `M${x} ${high}V9h${bar}V${high}ZM${x} 7V3h${bar}V7Z`;
    } else {
      noRepCount += 1;
      noReps += `M${x + 0.5} ${high}V2l${bar / 2 - 0.5} 6l${bar / 2 - 0.5} -6V${high}`;
    }
  }
  return { counted, noReps, noRepCount, slots: Math.max(fewestSlots, signs.length) };
}

/** A set's attempts in one line, for lists: "." counted, "!" with caution, a letter or "?" a no-rep. */
export function RibbonLine({ ribbon }: { ribbon: string }) {
  const words = useWords().ribbon;
  const { counted, noReps, noRepCount, slots } = lineParts(ribbon);
  const attempts = Array.from(ribbon).length;
  return (
    <svg
      className={styles.line}
      viewBox={`0 0 ${slots * pitch} ${high}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={words.lineSummary(attempts, noRepCount)}
    >
      <path className={styles.lineCounted} d={counted} />
      <path className={styles.lineNoRep} d={noReps} vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
