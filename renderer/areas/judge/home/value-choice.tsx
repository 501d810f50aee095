import { useState } from 'react';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './value-choice.module.css';

interface ValueChoiceProps {
  readonly label: string;
  /** What the free figure is called. */
  readonly field: string;
  readonly unit: string;
  readonly usual: readonly number[];
  readonly value: number | null;
  readonly say: (value: number) => string;
  readonly low: number;
  readonly high: number;
  readonly onChange: (value: number | null) => void;
}

/** One of the usual figures in one press, or any other. */
export function ValueChoice({ label, field, unit, usual, value, say, low, high, onChange }: ValueChoiceProps) {
  const words = useWords().judge.setup;
  const [free, setFree] = useState(value !== null && !usual.includes(value));
  const [wrong, setWrong] = useState(false);
  const options = [
    ...usual.map((item) => ({ value: String(item), label: say(item) })),
    { value: 'none', label: words.noneNoted },
    { value: 'other', label: words.otherValue },
  ];
  return (
    <div className={styles.choice}>
      <Segmented
        label={label}
        value={free ? 'other' : value === null ? 'none' : String(value)}
        options={options}
        onChange={(chosen) => {
          setFree(chosen === 'other');
          setWrong(false);
          if (chosen !== 'other') onChange(chosen === 'none' ? null : Number(chosen));
        }}
      />
      {free ? (
        <NumberField
          label={field}
          unit={unit}
          value={value}
          error={wrong ? words.badNumber(say(low), say(high)) : undefined}
          onChange={(typed) => {
            const good = typed !== null && typed >= low && typed <= high;
            setWrong(typed !== null && !good);
            onChange(good ? typed : null);
          }}
        />
      ) : null}
    </div>
  );
}
