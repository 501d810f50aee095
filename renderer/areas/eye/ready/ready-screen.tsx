import { useState } from 'react';
import { type ReadyCriteria, usualCriteria } from '../../../../shared-types/drills/ready.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { FailureNote, Loaded } from '../../../parts/controls/loaded.tsx';
import { useAction } from '../../../parts/desk/use-action.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { CriteriaForm } from './criteria-form.tsx';
import { ReadyList } from './ready-list.tsx';
import styles from './ready-screen.module.css';

/** What the gym asks before somebody judges, and who has shown it. */
export function ReadyScreen() {
  const words = useWords().eye;
  const criteria = useCall('eye criteria', (client, signal) => client.drills.criteria(undefined, { signal }));
  return (
    <Page
      title={words.ready.title}
      intro={words.ready.intro}
      help={words.ready.help}
      above={
        <LinkButton href="/" weight="quiet">
          {words.title}
        </LinkButton>
      }
    >
      <Loaded reading={criteria}>{(stored) => <Ready stored={stored} onSaved={criteria.again} />}</Loaded>
    </Page>
  );
}

function Ready({ stored, onSaved }: { stored: ReadyCriteria; onSaved: () => void }) {
  const words = useWords().eye.ready;
  const { tell } = useNotices();
  const [criteria, setCriteria] = useState(stored);
  const changed = JSON.stringify(criteria) !== JSON.stringify(stored);
  const who = useCall(
    `eye ready ${JSON.stringify(criteria)}`,
    (client, signal) => client.drills.ready({ criteria }, { signal }),
    { keep: true },
  );
  const save = useAction((client, next: ReadyCriteria) => client.drills.setCriteria(next));
  const keep = async (): Promise<void> => {
    if ((await save.run(criteria)) === undefined) return;
    tell(words.saved);
    onSaved();
  };
  return (
    <div className={styles.columns}>
      <section className={styles.part} aria-labelledby="eye-who">
        <h2 id="eye-who">{words.who}</h2>
        <Loaded reading={who}>
          {(lines) => (lines.length === 0 ? <EmptyState title={words.nobody} /> : <ReadyList lines={lines} />)}
        </Loaded>
      </section>
      <section className={styles.part} aria-labelledby="eye-bounds">
        <h2 id="eye-bounds">{words.bounds}</h2>
        <CriteriaForm criteria={criteria} onChange={setCriteria} />
        <div className={styles.deeds}>
          <Button weight="main" busy={save.busy} disabled={!changed} onClick={() => void keep()}>
            {words.save}
          </Button>
          <Button onClick={() => setCriteria({ ...usualCriteria, faults: criteria.faults })}>{words.usual}</Button>
        </div>
        {save.failure === undefined ? null : <FailureNote failure={save.failure} />}
      </section>
    </div>
  );
}
