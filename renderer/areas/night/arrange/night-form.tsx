import { type FormEvent, useState } from 'react';
import { useLocation } from 'wouter';
import type { Arrangement, Night } from '../../../../shared-types/night/night.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useConfirm } from '../../../parts/controls/confirm.tsx';
import { Check, TextField } from '../../../parts/controls/field.tsx';
import { FailureNote } from '../../../parts/controls/loaded.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { newId } from '../../../parts/desk/new-id.ts';
import { useAction } from '../../../parts/desk/use-action.ts';
import { useDraft } from '../../../parts/desk/use-draft.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import type { Known } from './new-night-screen.tsx';
import { emptyNight, entryOf, type NightEntry, toArrangement } from './night-entry.ts';
import styles from './night-form.module.css';
import { nightProblems } from './night-problems.ts';
import { PairFields } from './pair-fields.tsx';
import { PeopleFields } from './people-fields.tsx';
import { StationFields } from './station-fields.tsx';

/** What the groups of the form share. */
export interface FieldsProps {
  readonly entry: NightEntry;
  readonly known: Known;
  readonly problems: Readonly<Record<string, string>>;
  readonly change: (part: Partial<NightEntry>) => void;
}

function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A night that is there already, to be changed. */
export interface Held {
  readonly night: Night;
  readonly arrangement: Arrangement;
}

/** A new night where nothing is held. Name and day of one that is there never change. */
export function NightForm({ known, held }: { known: Known; held: Held | null }) {
  const words = useWords().night.form;
  const common = useWords().common;
  const [, navigate] = useLocation();
  const { tell } = useNotices();
  const confirm = useConfirm();
  const first = held === null ? emptyNight(today(), known.sheets) : entryOf(held.night, held.arrangement);
  const draft = useDraft<NightEntry>(`night ${held?.night.id ?? ''}`, first);
  const [pressed, setPressed] = useState(false);
  // One id for the form: a second press after a lost answer is the same night.
  const [made] = useState(() => ({ id: held?.night.id ?? newId(), createdAt: held?.night.createdAt ?? Date.now() }));
  const save = useAction(async (client, isNew: boolean, night: Night, arrangement: Arrangement) => {
    if (isNew) await client.nights.create({ night, arrangement });
    else await client.nights.append({ id: night.id, entry: { kind: 'arrange', arrangement } });
    return night;
  });
  const entry = draft.value;
  const problems = pressed ? nightProblems(entry, words) : {};
  const change = (part: Partial<NightEntry>): void => draft.set({ ...entry, ...part });
  const fields = { entry, known, problems, change };

  const submit = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    setPressed(true);
    if (Object.keys(nightProblems(entry, words)).length > 0) {
      const form = event.currentTarget;
      // After the render that marks the fields.
      setTimeout(() => form.querySelector<HTMLElement>('[aria-invalid], [data-wrong]')?.focus());
      return;
    }
    const night: Night = { ...made, name: entry.name.trim(), date: entry.date };
    const arrangement = toArrangement(entry, known.sheets, held?.arrangement ?? null);
    if ((await save.run(held === null, night, arrangement)) === undefined) return;
    draft.drop();
    tell(words.saved(night.name));
    navigate(`/${night.id}`, { replace: true });
  };
  const leave = async (): Promise<void> => {
    const question = { title: words.giveUpTitle, deed: words.giveUp, stay: words.keepTyping };
    if (draft.changed && !(await confirm(question))) return;
    draft.drop();
    navigate(held === null ? '/' : `/${held.night.id}`);
  };

  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} noValidate>
      <div className={styles.row}>
        {held === null ? (
          <>
            <TextField
              className={styles.wide}
              label={words.name}
              value={entry.name}
              error={problems.name}
              autoFocus
              onChange={(name) => change({ name })}
            />
            <TextField
              label={words.date}
              type="date"
              value={entry.date}
              error={problems.date}
              onChange={(date) => change({ date })}
            />
          </>
        ) : null}
        <TextField
          label={words.start}
          type="time"
          value={entry.start}
          error={problems.start}
          onChange={(start) => change({ start })}
        />
      </div>
      <div className={styles.row}>
        <NumberField
          label={words.heatMinutes}
          hint={words.heatMinutesHint}
          unit={words.minutes}
          value={entry.heatMinutes}
          error={problems.heatMinutes}
          onChange={(heatMinutes) => change({ heatMinutes })}
        />
        <NumberField
          label={words.lanes}
          value={entry.lanes}
          error={problems.lanes}
          onChange={(lanes) => change({ lanes })}
        />
      </div>
      <Check
        label={words.shadows}
        hint={words.shadowsHint}
        checked={entry.shadows}
        onChange={(shadows) => change({ shadows })}
      />
      <StationFields {...fields} />
      <PeopleFields {...fields} />
      <PairFields {...fields} />
      {save.failure === undefined ? null : <FailureNote failure={save.failure} deed={common.saveFailed} />}
      <div className={styles.actions}>
        <Button type="submit" weight="main" busy={save.busy}>
          {words.save}
        </Button>
        <Button onClick={() => void leave()}>{common.cancel}</Button>
      </div>
    </form>
  );
}
