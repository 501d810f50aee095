import { type FormEvent, useState } from 'react';
import { useLocation } from 'wouter';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useConfirm } from '../../../parts/controls/confirm.tsx';
import { FailureNote } from '../../../parts/controls/loaded.tsx';
import { useAction } from '../../../parts/desk/use-action.ts';
import { useDraft } from '../../../parts/desk/use-draft.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { FaultList } from './fault-list.tsx';
import { type SheetEntry, sheetOf } from './sheet-entry.ts';
import styles from './sheet-form.module.css';
import { sheetProblems } from './sheet-problems.ts';
import { StationFields } from './station-fields.tsx';

interface SheetFormProps {
  /** Names the draft. */
  readonly name: string;
  readonly initial: SheetEntry;
  /** The version that will be published. */
  readonly version: number;
  readonly idFor: (station: string) => string;
  readonly leaveTo: string;
}

/** What a field of the form needs: what stands there, how to change it, what is wrong at a place. */
export interface FormFields<T> {
  readonly entry: T;
  readonly change: (part: Partial<T>) => void;
  readonly problem: (place: string) => string | undefined;
}

const nothingWrong: ReadonlyMap<string, string> = new Map();

export function SheetForm({ name, initial, version, idFor, leaveTo }: SheetFormProps) {
  const words = useWords().standards.form;
  const common = useWords().common;
  const [, navigate] = useLocation();
  const { tell } = useNotices();
  const confirm = useConfirm();
  const draft = useDraft(`sheet ${name}`, initial);
  const publish = useAction((client, sheet: StandardSheet) => client.standards.publish(sheet));
  const [pressed, setPressed] = useState(false);
  const entry = draft.value;
  const build = (): StandardSheet => sheetOf(entry, { id: idFor(entry.station), version, createdAt: Date.now() });
  const problems = pressed ? sheetProblems(build(), words.problems) : nothingWrong;
  const change = (part: Partial<SheetEntry>): void => draft.set({ ...entry, ...part });
  const problem = (place: string): string | undefined => problems.get(place);

  const submit = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    setPressed(true);
    const sheet = build();
    if (sheetProblems(sheet, words.problems).size > 0) {
      const form = event.currentTarget;
      // After the render that marks the fields and opens the faults that hold them.
      setTimeout(() => form.querySelector<HTMLElement>('[aria-invalid]')?.focus());
      return;
    }
    const published = await publish.run(sheet);
    if (published === undefined) return;
    draft.drop();
    tell(words.published(published.station, published.version));
    navigate(`/sheet/${published.id}`);
  };
  const leave = async (): Promise<void> => {
    const question = { title: words.giveUpTitle, deed: words.giveUp, stay: words.keepWriting };
    if (draft.changed && !(await confirm(question))) return;
    draft.drop();
    navigate(leaveTo);
  };

  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} noValidate>
      <StationFields entry={entry} change={change} problem={problem} />
      <FaultList entry={entry} change={change} problem={problem} />
      {problems.size === 0 ? null : (
        <p className={styles.problem} role="alert">
          {problem('sheet') ?? words.problems.title(problems.size)}
        </p>
      )}
      {publish.failure === undefined ? null : <FailureNote failure={publish.failure} deed={common.saveFailed} />}
      <div className={styles.actions}>
        <Button type="submit" weight="main" busy={publish.busy}>
          {words.publish(version)}
        </Button>
        <Button onClick={() => void leave()}>{common.cancel}</Button>
        <p className={styles.hint}>{words.publishHint}</p>
      </div>
    </form>
  );
}
