import { calledName, type Person } from '../../../../shared-types/people.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { type Column, Table } from '../../../parts/controls/table.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { Group } from './group.tsx';
import { everybody, noPart, type PartEntry } from './night-entry.ts';
import styles from './night-form.module.css';
import type { FieldsProps } from './night-form.tsx';

/** Who competes and who judges, a line a person. */
export function PeopleFields({ entry, known, problems, change }: FieldsProps) {
  const words = useWords().night.form;
  const { parts } = entry;
  const put = (id: string, part: Partial<PartEntry>): void =>
    change({ parts: { ...parts, [id]: { ...(parts[id] ?? noPart), ...part } } });
  const chosen = (role: 'athlete' | 'judge') => Object.values(parts).filter((part) => part[role]).length;
  const role = (key: 'athlete' | 'judge', head: string): Column<Person> => ({
    key,
    head,
    cell: (person) => (
      <label className={styles.tick}>
        <input
          type="checkbox"
          aria-label={words.inColumn(head, calledName(person))}
          checked={parts[person.id]?.[key] ?? false}
          onChange={(event) => put(person.id, { [key]: event.target.checked })}
        />
      </label>
    ),
  });
  const time = (key: 'from' | 'until', head: string): Column<Person> => ({
    key,
    head,
    cell: ({ id, name, nickname }) => {
      const part = parts[id] ?? noPart;
      const wrong = problems[`times ${id}`];
      return (
        <>
          <input
            type="time"
            className={styles.time}
            aria-label={words.inColumn(head, calledName({ name, nickname }))}
            aria-invalid={wrong === undefined ? undefined : true}
            disabled={!part.athlete && !part.judge}
            value={part[key]}
            onChange={(event) => put(id, { [key]: event.target.value })}
          />
          {wrong === undefined || key === 'from' ? null : <p className={styles.error}>{wrong}</p>}
        </>
      );
    },
  });
  if (known.people.length === 0) {
    return (
      <Group title={words.peopleTitle} hint={words.nobody} problem={problems.people}>
        <div>
          <LinkButton href="~/people">{words.toPeople}</LinkButton>
        </div>
      </Group>
    );
  }
  return (
    <Group title={words.peopleTitle} hint={words.peopleHint} problem={problems.people}>
      <div>
        <Button onClick={() => change(everybody(entry, known.people))}>{words.everybody}</Button>
      </div>
      <Table
        caption={words.peopleTitle}
        columns={[
          {
            key: 'name',
            head: words.person,
            cell: (person) => <bdi className={styles.name}>{calledName(person)}</bdi>,
          },
          role('athlete', words.competes),
          role('judge', words.judges),
          time('from', words.from),
          time('until', words.until),
        ]}
        rows={known.people}
        rowKey={({ id }) => id}
      />
      <p className={styles.soft}>{words.chosen(chosen('athlete'), chosen('judge'))}</p>
    </Group>
  );
}
