import { Check, Field, Select, TextArea, TextField } from '../../../parts/controls/field.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { bodyPlace } from '../sheet-changes.ts';
import { codeOf, type FaultEntry } from './sheet-entry.ts';
import styles from './sheet-form.module.css';
import type { FormFields } from './sheet-form.tsx';

const units = ['cm', 'ms', 'degrees'] as const;

/** One fault. A code and a letter are proposed from the name until they are written by hand. */
export function FaultFields({ entry, change, problem }: FormFields<FaultEntry>) {
  const words = useWords().standards.form;
  const rename = (name: string): void => {
    const proposed = entry.code === codeOf(entry.name);
    const lettered = entry.initial === letterOf(entry.name);
    change({
      name,
      ...(proposed ? { code: codeOf(name) } : {}),
      ...(lettered ? { initial: letterOf(name) } : {}),
    });
  };
  const longText = (field: 'standard' | 'stand' | 'look' | 'remedy') => (
    <TextArea
      label={words[field]}
      value={entry[field]}
      error={problem(field)}
      onChange={(text) => change({ [field]: text })}
    />
  );
  return (
    <div className={styles.fields}>
      <TextField
        label={words.name}
        hint={words.nameHint}
        value={entry.name}
        error={problem('name')}
        onChange={rename}
      />
      <div className={styles.pair}>
        <TextField
          label={words.initial}
          hint={words.initialHint}
          className={styles.letter}
          maxLength={1}
          value={entry.initial}
          error={problem('initial')}
          onChange={(initial) => change({ initial: initial.toUpperCase() })}
        />
        <TextField
          label={words.code}
          hint={words.codeHint}
          value={entry.code}
          error={problem('code')}
          onChange={(code) => change({ code })}
        />
      </div>
      {longText('standard')}
      <div className={styles.pair}>
        {longText('stand')}
        {longText('look')}
      </div>
      <TextField label={words.cue} value={entry.cue} error={problem('cue')} onChange={(cue) => change({ cue })} />
      {longText('remedy')}
      <BodyHeight value={entry.bodyHeight} onChange={(bodyHeight) => change({ bodyHeight })} />
      <MarginFields entry={entry} change={change} problem={problem} />
    </div>
  );
}

function letterOf(name: string): string {
  return /[A-Z0-9]/.exec(name.normalize('NFKD').toUpperCase())?.[0] ?? '';
}

function BodyHeight({ value, onChange }: { value: number; onChange: (value: number) => void }) {
  const words = useWords().standards.form;
  return (
    <Field label={words.bodyHeight} hint={words.bodyHeightHint}>
      {(ids) => (
        <span className={styles.slider}>
          <input
            {...ids}
            type="range"
            min={0}
            max={1}
            step={0.05}
            value={value}
            aria-valuetext={words.bodyHeights[bodyPlace(value)]}
            onChange={(event) => onChange(Number(event.target.value))}
          />
          <span aria-hidden="true">{words.bodyHeights[bodyPlace(value)]}</span>
        </span>
      )}
    </Field>
  );
}

function MarginFields({ entry, change, problem }: FormFields<FaultEntry>) {
  const words = useWords().standards.form;
  const { margin } = entry;
  return (
    <>
      <Check
        label={words.measured}
        checked={margin !== null}
        onChange={(measured) =>
          change({ margin: measured ? { quantity: '', unit: 'cm', direction: '', tolerance: 0 } : null })
        }
      />
      {margin === null ? null : (
        <div className={styles.pair}>
          <TextField
            label={words.quantity}
            value={margin.quantity}
            error={problem('margin.quantity')}
            onChange={(quantity) => change({ margin: { ...margin, quantity } })}
          />
          <Select
            label={words.unit}
            value={margin.unit}
            options={units.map((value) => ({ value, label: words.units[value] }))}
            onChange={(unit) => change({ margin: { ...margin, unit } })}
          />
          <TextField
            label={words.direction}
            hint={words.directionHint}
            value={margin.direction}
            error={problem('margin.direction')}
            onChange={(direction) => change({ margin: { ...margin, direction } })}
          />
          <NumberField
            label={words.tolerance}
            unit={margin.unit}
            value={margin.tolerance}
            error={problem('margin.tolerance')}
            onChange={(tolerance) => change({ margin: { ...margin, tolerance } })}
          />
        </div>
      )}
    </>
  );
}
