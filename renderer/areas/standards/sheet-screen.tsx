import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { CautionsList } from '../../parts/cautions/cautions.tsx';
import { Button, LinkButton } from '../../parts/controls/button.tsx';
import { EmptyState } from '../../parts/controls/card.tsx';
import { Loaded } from '../../parts/controls/loaded.tsx';
import { ArrowLeft } from '../../parts/look/signs.tsx';
import { Page } from '../../parts/shell/page.tsx';
import { useWords } from '../../parts/words/words.tsx';
import { SheetFacts } from './sheet-facts.tsx';
import { SheetFaults } from './sheet-faults.tsx';
import styles from './sheet-screen.module.css';
import { useVersionText } from './use-version-text.ts';
import { useVersions } from './use-versions.ts';

/** One sheet to read, and to print as the briefing; its latest version where `version` is null. */
export function SheetScreen({ id, version }: { id: string; version: number | null }) {
  const words = useWords().standards;
  const versions = useVersions(id);
  const latest = versions.data?.[0];
  const sheet = version === null ? latest : versions.data?.find((item) => item.version === version);
  const back = (
    <LinkButton href="/" weight="quiet">
      <ArrowLeft />
      {words.back}
    </LinkButton>
  );
  return (
    <Page
      title={sheet?.station ?? words.title}
      help={words.help}
      above={back}
      actions={
        sheet === undefined ? null : (
          <>
            <LinkButton href={`/sheet/${id}/card`}>{words.cueCard}</LinkButton>
            <Button onClick={() => window.print()}>{words.printSheet}</Button>
          </>
        )
      }
    >
      <Loaded reading={versions}>
        {() =>
          sheet === undefined ? (
            <EmptyState title={words.missing} />
          ) : (
            <Sheet sheet={sheet} latest={latest?.version ?? sheet.version} />
          )
        }
      </Loaded>
    </Page>
  );
}

function Sheet({ sheet, latest }: { sheet: StandardSheet; latest: number }) {
  const words = useWords().standards;
  const versionText = useVersionText();
  return (
    <article className={styles.sheet}>
      {sheet.version === latest ? null : (
        <p className={styles.old}>
          {words.old(latest)} <LinkButton href={`/sheet/${sheet.id}`}>{words.showLatest}</LinkButton>
        </p>
      )}
      <div className={styles.top}>
        <section className={styles.rep}>
          <h2>{words.oneRep}</h2>
          <p className={styles.summary}>{sheet.summary}</p>
          <p className={styles.soft}>{words.rulebook}</p>
        </section>
        <SheetFacts sheet={sheet} />
      </div>
      <SheetFaults faults={sheet.faults} />
      <div className={styles.lists}>
        <Lines title={words.equipment} lines={sheet.equipment} />
        <Lines title={words.cautions} lines={sheet.cautions} />
        <section className="print-only">
          <h2>{words.generalCautions}</h2>
          <CautionsList />
        </section>
      </div>
      <footer className={styles.foot}>
        <p className={styles.soft}>{versionText(sheet)}</p>
        <div className={styles.deeds}>
          <LinkButton href={`/sheet/${sheet.id}/versions`} weight="quiet">
            {words.versions}
          </LinkButton>
          <LinkButton href={`/sheet/${sheet.id}/next`}>{words.next}</LinkButton>
        </div>
      </footer>
    </article>
  );
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section className={styles.lines}>
      <h2>{title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
