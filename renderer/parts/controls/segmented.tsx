import { useId } from 'react';
import { classNames } from '../look/class-names.ts';
import styles from './segmented.module.css';

interface SegmentedProps<T extends string> {
  readonly label: string;
  readonly value: T | null;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  /** The label is for the screen reader only: the options say it themselves. */
  readonly bare?: boolean;
  readonly large?: boolean;
}

/** One of a few, all in sight: a group of radio buttons, arrows move among them. */
export function Segmented<T extends string>({ label, value, options, onChange, bare, large }: SegmentedProps<T>) {
  const name = useId();
  return (
    <fieldset className={classNames(styles.group, large && styles.large)}>
      <legend className={bare ? 'visually-hidden' : styles.legend}>{label}</legend>
      <div className={styles.options}>
        {options.map((option) => (
          <label key={option.value} className={styles.option}>
            <input
              type="radio"
              className={styles.radio}
              name={name}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span className={styles.text}>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
