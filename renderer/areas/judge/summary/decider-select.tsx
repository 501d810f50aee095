import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { Select } from '../../../parts/controls/field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import type { SetDeeds } from './set-deeds.ts';

interface DeciderSelectProps {
  readonly deeds: SetDeeds;
  readonly people: readonly PersonLine[];
  readonly label: string;
  /** null stands for the set's own judge. */
  readonly value: string | null;
  readonly onChange: (id: string | null) => void;
}

const ownJudge = 'own';

/** Who decided: the set's judge, or another one as head judge. */
export function DeciderSelect({ deeds, people, label, value, onChange }: DeciderSelectProps) {
  const words = useWords().judge.finished.correct;
  const { judge } = deeds.start;
  const others = people
    .map((line) => line.person)
    .filter((person) => person.judge && person.archivedAt === null && person.id !== judge.id);
  return (
    <Select
      label={label}
      value={value ?? ownJudge}
      options={[
        { value: ownJudge, label: words.ownJudge(calledName(judge)) },
        ...others.map((person) => ({ value: person.id, label: calledName(person) })),
      ]}
      onChange={(chosen) => onChange(chosen === ownJudge ? null : chosen)}
    />
  );
}
