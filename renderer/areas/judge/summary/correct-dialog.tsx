import { useId, useState } from 'react';
import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import { refKey } from '../../../../shared-types/log/events.ts';
import type { Attempt } from '../../../../shared-types/log/state.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Dialog } from '../../../parts/controls/dialog.tsx';
import { Select, TextField } from '../../../parts/controls/field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { AttemptSelect } from './attempt-select.tsx';
import styles from './correct-dialog.module.css';
import { correctionDrafts, type Standing, standingOf } from './correction.ts';
import { DeciderSelect } from './decider-select.tsx';
import { FaultChecks } from './fault-checks.tsx';
import type { SetDeeds } from './set-deeds.ts';

interface CorrectDialogProps {
  readonly deeds: SetDeeds;
  readonly people: readonly PersonLine[];
  /** Index of the attempt, null while the dialog is closed. */
  readonly picked: number | null;
  readonly onPick: (index: number) => void;
  readonly onClose: () => void;
}

/** Puts a call right by a further event; the first call stays in the log. */
export function CorrectDialog({ deeds, people, picked, onPick, onClose }: CorrectDialogProps) {
  const words = useWords().judge.finished.correct;
  const titleId = useId();
  const attempt = picked === null ? undefined : deeds.state.attempts[picked];
  return (
    <Dialog open={attempt !== undefined} onClose={onClose} labelledBy={titleId}>
      <h2 id={titleId}>{words.title}</h2>
      {attempt === undefined || picked === null ? null : (
        <>
          <AttemptSelect deeds={deeds} value={picked} onChange={onPick} />
          <CorrectForm
            key={`${refKey(attempt.ref)} ${attempt.changes.length} ${String(attempt.withdrawn)}`}
            deeds={deeds}
            people={people}
            attempt={attempt}
            onClose={onClose}
          />
        </>
      )}
    </Dialog>
  );
}

interface CorrectFormProps {
  readonly deeds: SetDeeds;
  readonly people: readonly PersonLine[];
  readonly attempt: Attempt;
  readonly onClose: () => void;
}

function CorrectForm({ deeds, people, attempt, onClose }: CorrectFormProps) {
  const words = useWords().judge.finished.correct;
  const common = useWords().common;
  const [standing, setStanding] = useState<Standing>(standingOf(attempt));
  const [faults, setFaults] = useState<readonly string[]>(attempt.faults);
  const [by, setBy] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const options = (['counted', 'caution', 'no-rep', 'withdrawn'] as const).map((value) => ({
    value,
    label: words.standings[value],
  }));
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        const correction = { standing, faults, by, reason: reason.trim() };
        deeds.write(correctionDrafts(attempt, correction, deeds.log, deeds.now()));
        onClose();
      }}
    >
      <Select label={words.turnInto} value={standing} options={options} onChange={setStanding} />
      {standing === 'no-rep' || standing === 'caution' ? (
        <FaultChecks sheet={deeds.start.sheet} faults={faults} onChange={setFaults} />
      ) : null}
      {standing === 'withdrawn' ? null : (
        <>
          <TextField label={words.reason} optional value={reason} onChange={setReason} maxLength={2_000} />
          <DeciderSelect deeds={deeds} people={people} value={by} onChange={setBy} label={words.by} />
        </>
      )}
      <p className={styles.hint}>{words.hint}</p>
      <div className={styles.actions}>
        <Button onClick={onClose}>{common.cancel}</Button>
        <Button type="submit" weight="main">
          {words.save}
        </Button>
      </div>
    </form>
  );
}
