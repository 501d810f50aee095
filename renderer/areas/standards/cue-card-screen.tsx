import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { Button, LinkButton } from '../../parts/controls/button.tsx';
import { EmptyState } from '../../parts/controls/card.tsx';
import { Loaded } from '../../parts/controls/loaded.tsx';
import { ArrowLeft } from '../../parts/look/signs.tsx';
import { Page } from '../../parts/shell/page.tsx';
import { useWords } from '../../parts/words/words.tsx';
import styles from './cue-card.module.css';
import { FaultLetter } from './fault-letter.tsx';
import { byHeight } from './sheet-order.ts';
import { useVersionText } from './use-version-text.ts';
import { useVersions } from './use-versions.ts';

/** The judge's card: one page, one line a fault. */
export function CueCardScreen({ id }: { id: string }) {
  const words = useWords().standards;
  const common = useWords().common;
  const versions = useVersions(id);
  const sheet = versions.data?.[0];
  return (
    <Page
      title={sheet === undefined ? words.cueCard : words.cueCardTitle(sheet.station)}
      help={words.help}
      above={
        <LinkButton href={`/sheet/${id}`} weight="quiet">
          <ArrowLeft />
          {words.versionsBack}
        </LinkButton>
      }
      actions={<Button onClick={() => window.print()}>{common.print}</Button>}
    >
      <Loaded reading={versions}>
        {() => (sheet === undefined ? <EmptyState title={words.missing} /> : <CueCard sheet={sheet} />)}
      </Loaded>
    </Page>
  );
}

function CueCard({ sheet }: { sheet: StandardSheet }) {
  const words = useWords().standards;
  const common = useWords().common;
  const versionText = useVersionText();
  return (
    <article className={styles.card}>
      <ul className={styles.faults}>
        {byHeight(sheet.faults).map((fault) => (
          <li key={fault.code} className={styles.fault}>
            <FaultLetter initial={fault.initial} />
            <div className={styles.what}>
              <h2 className={styles.name}>{fault.name}</h2>
              <p className={styles.cue}>{fault.cue}</p>
            </div>
            <div className={styles.where}>
              <p>{fault.stand}</p>
              <p>
                <strong>{words.look}:</strong> {fault.look}
              </p>
            </div>
          </li>
        ))}
      </ul>
      <footer className={styles.foot}>
        <p>
          {words.noRep} {words.consequence(sheet.consequence)}. {common.rulebook}
        </p>
        <p>{versionText(sheet)}</p>
      </footer>
    </article>
  );
}
