import { calledName } from '../../../../shared-types/people.ts';
import type { SetStart } from '../../../link/store.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Card } from '../../../parts/controls/card.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import type { SetDeeds } from './set-deeds.ts';
import styles from './sign-off-card.module.css';

/** The athlete has seen the figures. */
export function SignOffCard({ deeds }: { deeds: SetDeeds }) {
  const words = useWords().judge.finished.signOff;
  const { dateTime } = useFormats();
  const { state, start } = deeds;
  const { signOff } = state;
  const name = calledName(start.athlete);
  return (
    <Card title={words.title} className={signOff === null ? 'no-print' : undefined}>
      {signOff === null ? (
        <>
          <p className={styles.hint}>{words.hint}</p>
          <div className="no-print">
            <Button onClick={() => deeds.write([{ kind: 'sign-off', at: deeds.now(), by: start.athlete.id, name }])}>
              {words.sign(name)}
            </Button>
          </div>
        </>
      ) : (
        <p>{words.signed(signOff.name, dateTime((state.startedAt ?? 0) + signOff.at))}</p>
      )}
    </Card>
  );
}

/** Lines to sign on, at the foot of the printed page. */
export function PrintedLines({ start }: { start: SetStart }) {
  const words = useWords().judge.finished.signOff;
  const { rulebook } = useWords().common;
  return (
    <footer className={`${styles.printed} print-only whole-on-page`}>
      <p>
        {words.line}: {start.athlete.name}
      </p>
      <p>
        {words.judgeLine}: {start.judge.name}
      </p>
      <p className={styles.rulebook}>{rulebook}</p>
    </footer>
  );
}
