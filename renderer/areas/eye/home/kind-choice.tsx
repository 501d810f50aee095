import { useId } from 'react';
import type { DrillKind } from '../../../../shared-types/drills/drill.ts';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './kind-choice.module.css';

const kinds: readonly DrillKind[] = ['single', 'stream', 'line', 'place'];

/** The four drills, each with what happens in it. */
export function KindChoice({ value, onChange }: { value: DrillKind; onChange: (kind: DrillKind) => void }) {
  const words = useWords().eye;
  const name = useId();
  return (
    <fieldset className={styles.group}>
      <legend className={styles.legend}>{words.setup.drill}</legend>
      <div className={styles.kinds}>
        {kinds.map((kind) => (
          <label key={kind} className={styles.kind}>
            <input
              type="radio"
              className={styles.radio}
              name={name}
              checked={kind === value}
              aria-describedby={`${name}-${kind}`}
              aria-label={words.kinds[kind]}
              onChange={() => onChange(kind)}
            />
            <span className={styles.text}>
              <span className={styles.title}>{words.kinds[kind]}</span>
              <span id={`${name}-${kind}`} className={styles.about}>
                {words.kindsAbout[kind]}
              </span>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
