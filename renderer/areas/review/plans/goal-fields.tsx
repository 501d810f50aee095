import { useState } from 'react';
import type { Goal } from '../../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Select } from '../../../parts/controls/field.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { goalOf } from '../address/goal.ts';
import { amountOf, type EndingKind, endingKinds, usualGoal } from './goal-text.ts';

interface GoalFieldsProps {
  readonly goal: Goal;
  readonly sheet: StandardSheet | undefined;
  readonly onChange: (goal: Goal) => void;
}

/** What the day will ask for: the kind of goal that the sheet allows, and how much. */
export function GoalFields({ goal, sheet, onChange }: GoalFieldsProps) {
  const words = useWords().review.plans.forecast;
  const [wrong, setWrong] = useState<{ readonly amount: number | null } | null>(null);
  const kinds = endingKinds(sheet);
  const kind: EndingKind = goal.kind === 'open' ? 'reps' : goal.kind;
  return (
    <>
      {kinds.length < 2 ? null : (
        <Select
          label={words.goal}
          value={kind}
          options={kinds.map((value) => ({ value, label: words.kinds[value] }))}
          onChange={(next) => {
            setWrong(null);
            onChange(usualGoal(next));
          }}
        />
      )}
      <NumberField
        label={kinds.length < 2 ? words.kinds[kind] : words.amount}
        value={wrong === null ? amountOf(goal) : wrong.amount}
        error={wrong === null ? undefined : words.badGoal}
        onChange={(amount) => {
          const next = amount === null ? null : goalOf(kind, amount);
          setWrong(next === null ? { amount } : null);
          if (next !== null) onChange(next);
        }}
      />
    </>
  );
}
