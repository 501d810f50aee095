import { useId, useState } from 'react';
import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import { refKey, type Verdict } from '../../../../shared-types/log/events.ts';
import type { Appeal } from '../../../../shared-types/log/state.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Card } from '../../../parts/controls/card.tsx';
import { Dialog } from '../../../parts/controls/dialog.tsx';
import { Select, TextField } from '../../../parts/controls/field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './appeal-card.module.css';
import { appealDrafts } from './appeal-drafts.ts';
import { AttemptSelect } from './attempt-select.tsx';
import { DeciderSelect } from './decider-select.tsx';
import { FaultChecks } from './fault-checks.tsx';
import type { SetDeeds } from './set-deeds.ts';

interface AppealCardProps {
  readonly deeds: SetDeeds;
  readonly people: readonly PersonLine[];
}

/** The athlete disputes a call; the head judge changes it or lets it stand. */
export function AppealCard({ deeds, people }: AppealCardProps) {
  const words = useWords().judge.finished;
  const [lodging, setLodging] = useState(false);
  const [answering, setAnswering] = useState<Appeal | null>(null);
  const { appeals, attempts } = deeds.state;
  const standing = attempts.filter((attempt) => !attempt.withdrawn);
  const numberOf = (appeal: Appeal): number =>
    standing.findIndex((attempt) => refKey(attempt.ref) === refKey(appeal.event.of)) + 1;
  return (
    <Card title={words.appeal.title} className={appeals.length === 0 ? 'no-print' : undefined}>
      {appeals.length === 0 ? (
        <p className={styles.hint}>{words.appeal.disputeHint}</p>
      ) : (
        <ul className={styles.list}>
          {appeals.map((appeal) => (
            <li key={refKey(appeal.event)} className={styles.appeal}>
              <p>
                <strong>{words.appeal.of(numberOf(appeal))}</strong> {words.appeal[appeal.outcome]}
              </p>
              {appeal.event.reason === '' ? null : <p className={styles.hint}>{appeal.event.reason}</p>}
              {appeal.outcome === 'open' ? (
                <Button className="no-print" onClick={() => setAnswering(appeal)}>
                  {words.appeal.answer}
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      {standing.length === 0 ? null : (
        <div className="no-print">
          <Button onClick={() => setLodging(true)}>{words.appeal.dispute}</Button>
        </div>
      )}
      <LodgeDialog deeds={deeds} open={lodging} onClose={() => setLodging(false)} />
      <AnswerDialog deeds={deeds} people={people} appeal={answering} onClose={() => setAnswering(null)} />
    </Card>
  );
}

function LodgeDialog({ deeds, open, onClose }: { deeds: SetDeeds; open: boolean; onClose: () => void }) {
  const words = useWords().judge.finished.appeal;
  const common = useWords().common;
  const titleId = useId();
  const { attempts } = deeds.state;
  const [chosen, setChosen] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  // The last no-rep is what an athlete disputes most.
  const usual = attempts.findLastIndex((attempt) => !attempt.withdrawn && attempt.verdict === 'no-rep');
  const index = chosen ?? Math.max(0, usual);
  const attempt = attempts[index];
  const close = (): void => {
    setChosen(null);
    setReason('');
    onClose();
  };
  return (
    <Dialog open={open} onClose={close} labelledBy={titleId}>
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          if (attempt === undefined || attempt.withdrawn) return;
          const by = deeds.start.athlete.id;
          deeds.write([
            { kind: 'appeal', at: deeds.now(), of: attempt.ref, reason: reason.trim(), by, outcome: 'open' },
          ]);
          close();
        }}
      >
        <h2 id={titleId}>{words.dispute}</h2>
        <AttemptSelect deeds={deeds} value={index} onChange={setChosen} />
        <TextField label={words.why} optional value={reason} onChange={setReason} maxLength={2_000} />
        <div className={styles.actions}>
          <Button onClick={close}>{common.cancel}</Button>
          <Button type="submit" weight="main" aria-disabled={attempt?.withdrawn === true}>
            {words.lodge}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

interface AnswerDialogProps {
  readonly deeds: SetDeeds;
  readonly people: readonly PersonLine[];
  readonly appeal: Appeal | null;
  readonly onClose: () => void;
}

function AnswerDialog({ deeds, people, appeal, onClose }: AnswerDialogProps) {
  const words = useWords().judge.finished;
  const titleId = useId();
  return (
    <Dialog open={appeal !== null} onClose={onClose} labelledBy={titleId}>
      <h2 id={titleId}>{words.appeal.answer}</h2>
      {appeal === null ? null : <AnswerForm deeds={deeds} people={people} appeal={appeal} onClose={onClose} />}
    </Dialog>
  );
}

function AnswerForm({ deeds, people, appeal, onClose }: AnswerDialogProps & { appeal: Appeal }) {
  const words = useWords().judge.finished;
  const target = deeds.state.attempts.find((attempt) => refKey(attempt.ref) === refKey(appeal.event.of));
  const [by, setBy] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const [verdict, setVerdict] = useState<Verdict>(target?.verdict === 'no-rep' ? 'counted' : 'no-rep');
  const [faults, setFaults] = useState<readonly string[]>([]);
  if (target === undefined) return null;
  const standing = deeds.state.attempts.filter((attempt) => !attempt.withdrawn);
  const answer = (outcome: 'upheld' | 'refused'): void => {
    const given = { outcome, verdict, faults, by: by ?? deeds.start.judge.id, reason: reason.trim() };
    deeds.write(appealDrafts(target.ref, given, deeds.now()));
    onClose();
  };
  return (
    <div className={styles.form}>
      <p>
        {words.correct.of(standing.indexOf(target) + 1)}, {words.clockAt(target.at)}
        {appeal.event.reason === '' ? null : <>: {appeal.event.reason}</>}
      </p>
      <DeciderSelect deeds={deeds} people={people} value={by} onChange={setBy} label={words.appeal.headJudge} />
      <TextField label={words.appeal.because} optional value={reason} onChange={setReason} maxLength={2_000} />
      <Select
        label={words.appeal.newCall}
        value={verdict}
        options={(['counted', 'caution', 'no-rep'] as const)
          .filter((value) => value !== target.verdict)
          .map((value) => ({ value, label: words.correct.standings[value] }))}
        onChange={setVerdict}
      />
      {verdict === 'counted' ? null : <FaultChecks sheet={deeds.start.sheet} faults={faults} onChange={setFaults} />}
      <div className={styles.actions}>
        <Button onClick={() => answer('refused')}>{words.appeal.refuse}</Button>
        <Button weight="main" onClick={() => answer('upheld')}>
          {words.appeal.uphold}
        </Button>
      </div>
    </div>
  );
}
