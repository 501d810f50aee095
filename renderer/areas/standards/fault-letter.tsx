import styles from './fault-letter.module.css';

/** A fault's letter in the open notch that stands for a no-rep everywhere. */
export function FaultLetter({ initial, large }: { initial: string; large?: boolean }) {
  return (
    <svg className={large ? styles.large : styles.letter} viewBox="0 0 32 36" aria-hidden="true">
      <path d="M2 35V3l14 8L30 3v32z" />
      <text x="16" y="29" textAnchor="middle">
        {initial}
      </text>
    </svg>
  );
}
