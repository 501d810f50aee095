import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { ComboBox } from '../../../parts/controls/combo-box.tsx';
import { useWords } from '../../../parts/words/words.tsx';

interface JudgeFieldProps {
  readonly people: readonly PersonLine[];
  readonly value: string | null;
  readonly error: string | undefined;
  readonly onChange: (id: string | null) => void;
  /** A name that nobody has yet was given. */
  readonly onAdd: (name: string) => void;
}

/** Who is judging: judges first, those with most sets first. */
export function JudgeField({ people, value, error, onChange, onAdd }: JudgeFieldProps) {
  const words = useWords().eye.setup;
  const ordered = people.toSorted(
    (one, other) => Number(other.person.judge) - Number(one.person.judge) || other.setsAsJudge - one.setsAsJudge,
  );
  return (
    <ComboBox
      label={words.judge}
      error={error}
      options={ordered.map(({ person }) => ({
        id: person.id,
        label: calledName(person),
        ...(person.nickname === '' ? {} : { detail: person.name }),
      }))}
      value={value}
      onChange={onChange}
      add={{ words: words.addPerson, onAdd }}
    />
  );
}
