import { useState } from 'react';
import type { Goal } from '../../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { TextField } from '../../../parts/controls/field.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { readSpan } from '../../../parts/controls/read-span.ts';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { useGoalText } from '../use-goal-text.ts';
import { goalOf } from './choice.ts';
import { amountOf, usualGoals } from './usual-amounts.ts';
import styles from './value-choice.module.css';

interface GoalChoiceProps {
  readonly sheet: StandardSheet;
  readonly goal: Goal;
  readonly onChange: (goal: Goal) => void;
}

/** What the set aims at: the kind, and how much of it. */
export function GoalChoice({ sheet, goal, onChange }: GoalChoiceProps) {
  const words = useWords().judge.setup;
  const goalText = useGoalText();
  const { number } = useFormats();
  const usual = usualGoals(goal.kind, sheet);
  const [free, setFree] = useState(() => !usual.some((item) => amountOf(item) === amountOf(goal)));
  return (
    <div className={styles.goal}>
      <Segmented
        label={words.goal}
        value={goal.kind}
        options={sheet.goals.map((kind) => ({ value: kind, label: words.goalKinds[kind] }))}
        onChange={(kind) => {
          setFree(false);
          onChange(goalOf(kind, sheet));
        }}
      />
      {goal.kind === 'open' ? (
        <p className={styles.hint}>{words.openHint}</p>
      ) : (
        <Segmented
          bare
          label={words.goalAmount[goal.kind]}
          value={free ? 'other' : String(amountOf(goal))}
          options={[
            ...usual.map((item) => ({
              value: String(amountOf(item)),
              label: item.kind === 'reps' ? number(item.reps) : goalText(item, sheet),
            })),
            { value: 'other', label: words.otherValue },
          ]}
          onChange={(chosen) => {
            setFree(chosen === 'other');
            const known = usual.find((item) => String(amountOf(item)) === chosen);
            if (known !== undefined) onChange(known);
          }}
        />
      )}
      {free && goal.kind !== 'open' ? <FreeGoal goal={goal} onChange={onChange} /> : null}
    </div>
  );
}

function FreeGoal({ goal, onChange }: { goal: Exclude<Goal, { kind: 'open' }>; onChange: (goal: Goal) => void }) {
  const words = useWords().judge.setup;
  const { duration, number } = useFormats();
  const [typed, setTyped] = useState<number | null>(amountOf(goal));
  const [span, setSpan] = useState(goal.kind === 'clock' ? duration(goal.milliseconds, 0) : '');
  if (goal.kind === 'clock') {
    return (
      <TextField
        label={words.goalAmount.clock}
        value={span}
        inputMode="text"
        error={readSpan(span) === null ? words.badSpan : undefined}
        onChange={(text) => {
          setSpan(text);
          const milliseconds = readSpan(text);
          if (milliseconds !== null) onChange({ kind: 'clock', milliseconds });
        }}
      />
    );
  }
  const most = goal.kind === 'reps' ? 10_000 : 100_000;
  const good = (value: number | null): value is number =>
    value !== null && value >= 1 && value <= most && (goal.kind !== 'reps' || Number.isInteger(value));
  return (
    <NumberField
      label={words.goalAmount[goal.kind]}
      value={typed}
      error={good(typed) ? undefined : words.badNumber(number(1), number(most))}
      onChange={(value) => {
        setTyped(value);
        if (good(value))
          onChange(goal.kind === 'reps' ? { kind: 'reps', reps: value } : { kind: 'metres', metres: value });
      }}
    />
  );
}
