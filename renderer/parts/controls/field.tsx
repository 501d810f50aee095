import { type ComponentProps, type ReactNode, useId } from 'react';
import { classNames } from '../look/class-names.ts';
import { useWords } from '../words/words.tsx';
import styles from './field.module.css';

interface Labelled {
  readonly label: string;
  /** A sentence under the label, for what the label cannot say. */
  readonly hint?: ReactNode;
  /** What is wrong with the entry, in words; none where nothing is. */
  readonly error?: string | undefined;
  /** Says that it may be left empty. */
  readonly optional?: boolean;
}

export interface ControlIds {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
}

interface FieldProps extends Labelled {
  readonly className?: string | undefined;
  /** Draws the control with the ids that tie it to its label, hint and error. */
  readonly children: (ids: ControlIds) => ReactNode;
}

/** A control with its label above, its hint and what is wrong with it. */
export function Field({ label, hint, error, optional, className, children }: FieldProps) {
  const words = useWords().common;
  const id = useId();
  const told = [hint === undefined ? '' : `${id}-hint`, error === undefined ? '' : `${id}-error`].filter(Boolean);
  return (
    <div className={classNames(styles.field, className)}>
      <label className={styles.label} htmlFor={id}>
        {label}
        {optional ? <span className={styles.optional}> {words.optional}</span> : null}
      </label>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      {children({
        id,
        'aria-describedby': told.length === 0 ? undefined : told.join(' '),
        'aria-invalid': error === undefined ? undefined : true,
      })}
      {error === undefined ? null : (
        <p id={`${id}-error`} className={styles.error}>
          {error}
        </p>
      )}
    </div>
  );
}

type TextProps = Labelled &
  Omit<ComponentProps<'input'>, 'value' | 'onChange' | 'id' | 'children'> & {
    readonly value: string;
    readonly onChange: (value: string) => void;
  };

export function TextField({ label, hint, error, optional, value, onChange, className, ...rest }: TextProps) {
  return (
    <Field label={label} hint={hint} error={error} optional={optional ?? false} className={className}>
      {(ids) => (
        <input
          type="text"
          autoComplete="off"
          {...rest}
          {...ids}
          dir="auto"
          className={styles.input}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

type AreaProps = Labelled &
  Omit<ComponentProps<'textarea'>, 'value' | 'onChange' | 'id' | 'children'> & {
    readonly value: string;
    readonly onChange: (value: string) => void;
  };

/** Text of several lines; it grows with what is written, as far as the browser can. */
export function TextArea({ label, hint, error, optional, value, onChange, className, ...rest }: AreaProps) {
  return (
    <Field label={label} hint={hint} error={error} optional={optional ?? false} className={className}>
      {(ids) => (
        <textarea
          rows={2}
          {...rest}
          {...ids}
          dir="auto"
          className={classNames(styles.input, styles.area)}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

interface SelectProps<T extends string> extends Labelled {
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly className?: string | undefined;
}

export function Select<T extends string>({ value, options, onChange, className, ...labelled }: SelectProps<T>) {
  return (
    <Field {...labelled} className={className}>
      {(ids) => (
        <select
          {...ids}
          className={styles.input}
          value={value}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.target.value);
            if (chosen !== undefined) onChange(chosen.value);
          }}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

interface CheckProps {
  readonly label: string;
  readonly hint?: ReactNode;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly disabled?: boolean;
}

/** A yes or no. */
export function Check({ label, hint, checked, onChange, disabled }: CheckProps) {
  const id = useId();
  return (
    <div className={styles.check}>
      <input
        id={id}
        type="checkbox"
        checked={checked}
        disabled={disabled}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => onChange(event.target.checked)}
      />
      <label htmlFor={id}>{label}</label>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
    </div>
  );
}
