import { useState } from 'react';
import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import type { Person } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import type { SetStart } from '../../../link/store.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Check, Select, TextField } from '../../../parts/controls/field.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { TagInput } from '../../../parts/controls/tag-input.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { type Choice, missing, toSetup, withSheet } from './choice.ts';
import { GoalChoice } from './goal-choice.tsx';
import { newId } from './new-id.ts';
import { PersonField } from './person-field.tsx';
import styles from './set-form.module.css';
import { ValueChoice } from './value-choice.tsx';

interface SetFormProps {
  readonly first: Choice;
  readonly sheets: readonly StandardSheet[];
  readonly people: readonly PersonLine[];
  /** Writes the people who are new or take a role for the first time, remembers the choice, and goes on. */
  readonly onStart: (start: SetStart, choice: Choice, toSave: readonly Person[]) => void;
  readonly busy: boolean;
}

/** More sheets than these are a list to choose from instead of buttons. */
const mostButtons = 6;

function personOf(name: string, role: 'athlete' | 'judge'): Person {
  const base = { id: newId(), name: name.trim(), nickname: '', notes: '', archivedAt: null, createdAt: Date.now() };
  return { ...base, athlete: role === 'athlete', judge: role === 'judge' };
}

/** Everything that is fixed before go, on one screen, filled in as far as it is known. */
export function SetForm({ first, sheets, people, onStart, busy }: SetFormProps) {
  const words = useWords().judge;
  const formats = useFormats();
  const [choice, setChoice] = useState(first);
  const [added, setAdded] = useState<readonly Person[]>([]);
  const [names, setNames] = useState({ athlete: '', judge: '' });
  const [tried, setTried] = useState(false);
  const sheet = sheets.find((item) => item.id === choice.sheet);
  const nobody = people.length === 0;
  const change = (part: Partial<Choice>): void => setChoice((before) => ({ ...before, ...part }));
  const lines = [...added.map((person) => ({ person, setsAsAthlete: 0, setsAsJudge: 0 })), ...people];
  const errorOf = (field: 'athlete' | 'judge'): string | undefined => {
    const given = nobody ? names[field].trim() !== '' : choice[field] !== null;
    return tried && !given ? words.setup.missing[field] : undefined;
  };

  const add = (role: 'athlete' | 'judge', name: string): void => {
    const person = personOf(name, role);
    setAdded((before) => [person, ...before]);
    change({ [role]: person.id });
  };

  /** The two names of the very first set; one name given twice is one person with both roles. */
  const firstPeople = (): { athlete: Person; judge: Person } | null => {
    if (names.athlete.trim() === '' || names.judge.trim() === '') return null;
    const athlete = personOf(names.athlete, 'athlete');
    if (names.athlete.trim() !== names.judge.trim()) return { athlete, judge: personOf(names.judge, 'judge') };
    const both = { ...athlete, judge: true };
    return { athlete: both, judge: both };
  };

  const submit = (): void => {
    setTried(true);
    if (sheet === undefined) return;
    const find = (id: string | null): Person | undefined => lines.find((line) => line.person.id === id)?.person;
    const firsts = nobody ? firstPeople() : null;
    const athlete = firsts?.athlete ?? find(choice.athlete);
    const judge = firsts?.judge ?? find(choice.judge);
    if (athlete === undefined || judge === undefined) return;
    const full = { ...choice, athlete: athlete.id, judge: judge.id };
    const setup = toSetup(full, sheet, newId(), Date.now());
    if (setup === null || missing(full).length > 0) return;
    const roles =
      athlete.id === judge.id
        ? [{ ...athlete, athlete: true, judge: true }]
        : [
            { ...athlete, athlete: true },
            { ...judge, judge: true },
          ];
    const toSave = roles.filter((person) => {
      const known = people.find((line) => line.person.id === person.id)?.person;
      return known === undefined || known.athlete !== person.athlete || known.judge !== person.judge;
    });
    onStart({ setup, sheet, athlete, judge }, full, toSave);
  };

  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <div className={styles.people}>
        {nobody
          ? (['athlete', 'judge'] as const).map((role) => (
              <TextField
                key={role}
                label={role === 'athlete' ? words.setup.athleteName : words.setup.judgeName}
                value={names[role]}
                maxLength={200}
                error={errorOf(role)}
                onChange={(name) => setNames((before) => ({ ...before, [role]: name }))}
              />
            ))
          : (['athlete', 'judge'] as const).map((role) => (
              <PersonField
                key={role}
                role={role}
                people={lines}
                value={choice[role]}
                onChange={(id) => change({ [role]: id })}
                onAdd={(name) => add(role, name)}
                error={errorOf(role)}
              />
            ))}
      </div>
      {sheets.length <= mostButtons ? (
        <Segmented
          label={words.setup.station}
          value={choice.sheet}
          options={sheets.map((item) => ({ value: item.id, label: item.station }))}
          onChange={(id) => chooseSheet(id)}
        />
      ) : (
        <Select
          label={words.setup.station}
          value={choice.sheet ?? ''}
          options={sheets.map((item) => ({ value: item.id, label: item.station }))}
          onChange={(id) => chooseSheet(id)}
        />
      )}
      {sheet === undefined ? null : (
        <>
          <GoalChoice key={`goal ${sheet.id}`} sheet={sheet} goal={choice.goal} onChange={(goal) => change({ goal })} />
          <div className={styles.pair}>
            {sheet.loadsKg.length === 0 ? null : (
              <ValueChoice
                key={`load ${sheet.id}`}
                label={words.setup.load}
                field={words.setup.kilogramsField}
                unit="kg"
                usual={sheet.loadsKg}
                value={choice.loadKg}
                say={formats.kilograms}
                low={0}
                high={500}
                onChange={(loadKg) => change({ loadKg })}
              />
            )}
            {sheet.heightsM.length === 0 ? null : (
              <ValueChoice
                key={`height ${sheet.id}`}
                label={sheet.heightName === '' ? words.setup.height : sheet.heightName}
                field={words.setup.metresField}
                unit="m"
                usual={sheet.heightsM}
                value={choice.heightM}
                say={(value) => formats.metres(value)}
                low={0}
                high={10}
                onChange={(heightM) => change({ heightM })}
              />
            )}
          </div>
        </>
      )}
      <Segmented
        label={words.setup.came}
        value={choice.before}
        options={(['fresh', 'run', 'station'] as const).map((value) => ({ value, label: words.before[value] }))}
        onChange={(before) => change({ before })}
      />
      <details className={styles.more} open={choice.tags.length > 0 || choice.practice}>
        <summary>{words.setup.more}</summary>
        <div className={styles.inside}>
          <TagInput
            label={words.setup.tags}
            hint={words.setup.tagsHint}
            tags={choice.tags}
            onChange={(tags) => change({ tags })}
            optional
          />
          <Check
            label={words.setup.practice}
            hint={words.setup.practiceHint}
            checked={choice.practice}
            onChange={(practice) => change({ practice })}
          />
        </div>
      </details>
      <div className={styles.start}>
        <Button type="submit" weight="main" large busy={busy}>
          {words.setup.start}
        </Button>
      </div>
    </form>
  );

  function chooseSheet(id: string): void {
    const chosen = sheets.find((item) => item.id === id);
    if (chosen !== undefined) setChoice((before) => withSheet(before, chosen));
  }
}
