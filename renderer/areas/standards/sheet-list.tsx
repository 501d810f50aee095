import { Link } from 'wouter';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../parts/controls/button.tsx';
import { EmptyState } from '../../parts/controls/card.tsx';
import { Loaded } from '../../parts/controls/loaded.tsx';
import { useCall } from '../../parts/desk/use-call.ts';
import { Page } from '../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../parts/words/words.tsx';
import { FaultLetter } from './fault-letter.tsx';
import styles from './sheet-list.module.css';
import { byHeight } from './sheet-order.ts';
import { useVersionText } from './use-version-text.ts';

export function SheetList() {
  const words = useWords().standards;
  const sheets = useCall('sheets', (client, signal) => client.standards.list(undefined, { signal }), {
    topics: ['standards'],
  });
  const { compare } = useFormats();
  const write = (
    <LinkButton href="/new" weight="main">
      {words.write}
    </LinkButton>
  );
  return (
    <Page title={words.title} intro={words.intro} help={words.help} actions={write}>
      <Loaded reading={sheets}>
        {(list) =>
          list.length === 0 ? (
            <EmptyState title={words.emptyTitle} text={words.emptyText} />
          ) : (
            <>
              <ul className={styles.list}>
                {list
                  .toSorted(
                    (one, other) => Number(other.shipped) - Number(one.shipped) || compare(one.station, other.station),
                  )
                  .map((sheet) => (
                    <li key={sheet.id}>
                      <SheetCard sheet={sheet} />
                    </li>
                  ))}
              </ul>
              <p className={styles.note}>{words.rulebookAll}</p>
            </>
          )
        }
      </Loaded>
    </Page>
  );
}

function SheetCard({ sheet }: { sheet: StandardSheet }) {
  const words = useWords().standards;
  const versionText = useVersionText();
  return (
    <Link href={`/sheet/${sheet.id}`} className={styles.card}>
      <h2 className={styles.station}>
        <bdi>{sheet.station}</bdi>
      </h2>
      <p className={styles.meta}>
        {versionText(sheet)} · {words.faultCount(sheet.faults.length)}
      </p>
      <span className={styles.letters} aria-hidden="true">
        {byHeight(sheet.faults).map((fault) => (
          <FaultLetter key={fault.code} initial={fault.initial} />
        ))}
      </span>
    </Link>
  );
}
