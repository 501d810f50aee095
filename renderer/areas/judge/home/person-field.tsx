import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { ComboBox } from '../../../parts/controls/combo-box.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './person-field.module.css';

interface PersonFieldProps {
  readonly role: 'athlete' | 'judge';
  readonly people: readonly PersonLine[];
  readonly value: string | null;
  readonly onChange: (id: string | null) => void;
  /** A name that nobody has yet was given. */
  readonly onAdd: (name: string) => void;
  readonly error: string | undefined;
}

/** So many are one press away. */
const near = 4;

function times(line: PersonLine, role: 'athlete' | 'judge'): number {
  return role === 'athlete' ? line.setsAsAthlete : line.setsAsJudge;
}

/** Those of the role first, those with most sets in it first; the others after them, since a coach may jump in. */
function inOrder(people: readonly PersonLine[], role: 'athlete' | 'judge'): readonly PersonLine[] {
  return people.toSorted(
    (one, other) => Number(other.person[role]) - Number(one.person[role]) || times(other, role) - times(one, role),
  );
}

export function PersonField({ role, people, value, onChange, onAdd, error }: PersonFieldProps) {
  const words = useWords().judge.setup;
  const ordered = inOrder(people, role);
  const nearest = ordered.filter((line) => line.person[role] && line.person.id !== value).slice(0, near);
  return (
    <div className={styles.field}>
      <ComboBox
        label={role === 'athlete' ? words.athlete : words.judge}
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
      {nearest.length === 0 ? null : (
        <ul className={styles.near}>
          {nearest.map(({ person }) => (
            <li key={person.id}>
              <Button weight="quiet" className={styles.chip} onClick={() => onChange(person.id)}>
                <bdi>{calledName(person)}</bdi>
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
