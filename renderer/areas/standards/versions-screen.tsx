import { Link } from 'wouter';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../parts/controls/button.tsx';
import { Card } from '../../parts/controls/card.tsx';
import { Loaded } from '../../parts/controls/loaded.tsx';
import { ArrowLeft } from '../../parts/look/signs.tsx';
import { Page } from '../../parts/shell/page.tsx';
import { useWords } from '../../parts/words/words.tsx';
import { type SheetChange, sheetChanges } from './sheet-changes.ts';
import { useVersionText } from './use-version-text.ts';
import { useVersions } from './use-versions.ts';
import styles from './versions-screen.module.css';

/** Every version of a sheet and what it changed. */
export function VersionsScreen({ id }: { id: string }) {
  const words = useWords().standards;
  const versions = useVersions(id);
  const station = versions.data?.[0]?.station;
  return (
    <Page
      title={station === undefined ? words.versions : words.versionsTitle(station)}
      help={words.help}
      narrow
      above={
        <LinkButton href={`/sheet/${id}`} weight="quiet">
          <ArrowLeft />
          {words.versionsBack}
        </LinkButton>
      }
    >
      <Loaded reading={versions}>
        {(list) => (
          <div className={styles.versions}>
            {list.map((sheet, index) => (
              <Version key={sheet.version} sheet={sheet} earlier={list[index + 1]} />
            ))}
          </div>
        )}
      </Loaded>
    </Page>
  );
}

function Version({ sheet, earlier }: { sheet: StandardSheet; earlier: StandardSheet | undefined }) {
  const words = useWords().standards;
  const versionText = useVersionText();
  const changes = earlier === undefined ? [] : sheetChanges(earlier, sheet, words);
  return (
    <Card title={<Link href={`/sheet/${sheet.id}/${sheet.version}`}>{versionText(sheet)}</Link>}>
      {earlier === undefined ? <p className={styles.soft}>{words.firstVersion}</p> : null}
      {earlier !== undefined && changes.length === 0 ? <p className={styles.soft}>{words.noChange}</p> : null}
      {changes.length === 0 ? null : (
        <ul className={styles.changes}>
          {changes.map((change) => (
            <li key={change.where}>
              <Change change={change} />
            </li>
          ))}
        </ul>
      )}
    </Card>
  );
}

function Change({ change }: { change: SheetChange }) {
  const words = useWords().standards;
  return (
    <>
      <h3>{change.where}</h3>
      <dl className={styles.pair}>
        {change.before === null ? null : (
          <>
            <dt>{words.was}</dt>
            <dd className={styles.was}>{change.before}</dd>
          </>
        )}
        <dt>{words.isNow}</dt>
        <dd>{change.after ?? words.nothing}</dd>
      </dl>
    </>
  );
}
