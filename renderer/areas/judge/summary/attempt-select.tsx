import { Select } from '../../../parts/controls/field.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import type { SetDeeds } from './set-deeds.ts';

interface AttemptSelectProps {
  readonly deeds: SetDeeds;
  /** Index over all attempts, withdrawn ones too. */
  readonly value: number;
  readonly onChange: (index: number) => void;
}

/** Which attempt: its number, its time, how it stands. */
export function AttemptSelect({ deeds, value, onChange }: AttemptSelectProps) {
  const words = useWords().judge.finished;
  const { list } = useFormats();
  let number = 0;
  const options = deeds.state.attempts.map((attempt, index) => {
    if (!attempt.withdrawn) number += 1;
    const names = attempt.faults.map(
      (code) => deeds.start.sheet.faults.find((fault) => fault.code === code)?.name ?? code,
    );
    const how = attempt.withdrawn ? words.history.withdrawn : words.history.say.verdicts[attempt.verdict];
    const label = words.correct.attempt(attempt.withdrawn ? null : number, words.clockAt(attempt.at), how, list(names));
    return { value: String(index), label };
  });
  return (
    <Select
      label={words.correct.which}
      value={String(value)}
      options={options}
      onChange={(chosen) => onChange(Number(chosen))}
    />
  );
}
