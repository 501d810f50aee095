import { type FormEvent, useState } from 'react';
import { useLocation } from 'wouter';
import { calledName, type Person } from '../../../shared-types/people.ts';
import { Button, LinkButton } from '../../parts/controls/button.tsx';
import { EmptyState } from '../../parts/controls/card.tsx';
import { useConfirm } from '../../parts/controls/confirm.tsx';
import { Check, TextArea, TextField } from '../../parts/controls/field.tsx';
import { FailureNote, Loaded } from '../../parts/controls/loaded.tsx';
import { newId } from '../../parts/desk/new-id.ts';
import { useAction } from '../../parts/desk/use-action.ts';
import { useCall } from '../../parts/desk/use-call.ts';
import { useDraft } from '../../parts/desk/use-draft.ts';
import { ArrowLeft } from '../../parts/look/signs.tsx';
import { useNotices } from '../../parts/shell/notices.tsx';
import { Page } from '../../parts/shell/page.tsx';
import { useWords } from '../../parts/words/words.tsx';
import styles from './people.module.css';
import { emptyEntry, entryProblems, type PersonEntry } from './person-form.ts';

/** One person: a new one where `id` is null. */
export function PersonScreen({ id }: { id: string | null }) {
  const words = useWords().people;
  const people = useCall('people true', (client, signal) => client.people.list({ archived: true }, { signal }), {
    topics: ['people'],
  });
  const back = (
    <LinkButton href="/" weight="quiet">
      <ArrowLeft />
      {words.back}
    </LinkButton>
  );
  if (id === null) {
    return (
      <Page title={words.newTitle} help={words.formHelp} above={back}>
        <PersonForm person={null} />
      </Page>
    );
  }
  const held = people.data?.find((line) => line.person.id === id)?.person;
  return (
    <Page title={held === undefined ? words.title : short(held.name)} help={words.formHelp} above={back}>
      <Loaded reading={people}>
        {() => (held === undefined ? <EmptyState title={words.missing} /> : <PersonForm person={held} />)}
      </Loaded>
    </Page>
  );
}

/** A title or a message has room for this much of a name. */
function short(name: string, most = 60): string {
  const characters = Array.from(name);
  return characters.length <= most ? name : `${characters.slice(0, most).join('')}…`;
}

function PersonForm({ person }: { person: Person | null }) {
  const words = useWords().people;
  const common = useWords().common;
  const [, navigate] = useLocation();
  const { tell } = useNotices();
  const confirm = useConfirm();
  const draft = useDraft<PersonEntry>(`person ${person?.id ?? ''}`, person ?? emptyEntry);
  const [pressed, setPressed] = useState(false);
  const save = useAction((client, next: Person) => client.people.save(next));
  const entry = draft.value;
  const problems = pressed ? entryProblems(entry, words) : {};
  const change = (part: Partial<PersonEntry>): void => draft.set({ ...entry, ...part });

  const submit = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    setPressed(true);
    const wrong = entryProblems(entry, words);
    if (Object.keys(wrong).length > 0) {
      const form = event.currentTarget;
      // After the render that marks the fields.
      setTimeout(() => form.querySelector<HTMLElement>('[aria-invalid]')?.focus());
      return;
    }
    const { name, nickname, athlete, judge, notes } = entry;
    const saved = await save.run({
      id: person?.id ?? newId(),
      name: name.trim(),
      nickname: nickname.trim(),
      athlete,
      judge,
      notes,
      archivedAt: person?.archivedAt ?? null,
      createdAt: person?.createdAt ?? Date.now(),
    });
    if (saved === undefined) return;
    draft.drop();
    tell(words.saved(short(calledName(saved))));
    navigate('/');
  };
  const leave = async (): Promise<void> => {
    const question = { title: words.giveUpTitle, deed: words.giveUp, stay: words.keepTyping };
    if (draft.changed && !(await confirm(question))) return;
    draft.drop();
    navigate('/');
  };

  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} noValidate>
      <TextField
        label={words.name}
        value={entry.name}
        error={problems.name}
        autoFocus={person === null}
        onChange={(name) => change({ name })}
      />
      <TextField
        label={words.nickname}
        optional
        hint={words.nicknameHint}
        value={entry.nickname}
        error={problems.nickname}
        onChange={(nickname) => change({ nickname })}
      />
      <fieldset className={styles.roles}>
        <legend>{words.role}</legend>
        <Check label={words.athlete} checked={entry.athlete} onChange={(athlete) => change({ athlete })} />
        <Check label={words.judge} checked={entry.judge} onChange={(judge) => change({ judge })} />
        {problems.role === undefined ? null : (
          <p className={styles.error} role="alert">
            {problems.role}
          </p>
        )}
      </fieldset>
      <TextArea
        label={words.notes}
        optional
        hint={words.notesHint}
        value={entry.notes}
        error={problems.notes}
        onChange={(notes) => change({ notes })}
      />
      {save.failure === undefined ? null : <FailureNote failure={save.failure} deed={common.saveFailed} />}
      <div className={styles.actions}>
        <Button type="submit" weight="main" busy={save.busy}>
          {words.save}
        </Button>
        <Button onClick={() => void leave()}>{common.cancel}</Button>
      </div>
      {person === null ? null : <ArchiveSwitch person={person} />}
    </form>
  );
}

function ArchiveSwitch({ person }: { person: Person }) {
  const words = useWords().people;
  const { tell } = useNotices();
  const [, navigate] = useLocation();
  const archive = useAction((client, id: string) => client.people.archive({ id }));
  const restore = useAction((client, id: string) => client.people.restore({ id }));
  const failure = archive.failure ?? restore.failure;
  const name = short(calledName(person));
  const set = async (): Promise<void> => {
    if (person.archivedAt !== null) {
      if ((await restore.run(person.id)) !== undefined) tell(words.restoredDone(name));
      return;
    }
    if ((await archive.run(person.id)) === undefined) return;
    tell(words.archivedDone(name), { undo: () => void restore.run(person.id) });
    navigate('/');
  };
  return (
    <div className={styles.apart}>
      <Button busy={archive.busy || restore.busy} onClick={() => void set()}>
        {person.archivedAt === null ? words.archive : words.restore}
      </Button>
      <p>{words.archiveHint}</p>
      {failure === undefined ? null : <FailureNote failure={failure} />}
    </div>
  );
}
