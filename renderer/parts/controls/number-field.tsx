import { useState } from 'react';
import { useFormats } from '../words/words.tsx';
import styles from './field.module.css';
import { Field } from './field.tsx';
import { readNumber } from './read-number.ts';

interface NumberFieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly error?: string | undefined;
  readonly optional?: boolean;
  readonly unit?: string;
  /** null while nothing, or nothing that is a number, stands there. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly className?: string | undefined;
}

/** A number written as people write it, with a decimal point or comma. */
export function NumberField({ value, unit, onChange, label, hint, error, optional, className }: NumberFieldProps) {
  const formats = useFormats();
  const [text, setText] = useState<string | null>(null);
  // What is typed stands as typed until the value changes from elsewhere.
  const shown = text !== null && readNumber(text) === value ? text : value === null ? '' : formats.plain(value);
  return (
    <Field label={label} hint={hint} error={error} optional={optional ?? false} className={className}>
      {(ids) => (
        <span className={styles.number}>
          <input
            {...ids}
            type="text"
            inputMode="decimal"
            autoComplete="off"
            className={styles.input}
            value={text ?? shown}
            onFocus={() => setText(shown)}
            onBlur={() => setText(null)}
            onChange={(event) => {
              setText(event.target.value);
              onChange(readNumber(event.target.value));
            }}
          />
          {unit === undefined ? null : <span className={styles.unit}>{unit}</span>}
        </span>
      )}
    </Field>
  );
}
