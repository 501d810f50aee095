import { Link } from 'wouter';
import type { NightLine } from '../../../shared-types/contract/nights.ts';
import { LinkButton } from '../../parts/controls/button.tsx';
import { EmptyState } from '../../parts/controls/card.tsx';
import { Loaded } from '../../parts/controls/loaded.tsx';
import { startOfDay } from '../../parts/controls/start-of-day.ts';
import { useCall } from '../../parts/desk/use-call.ts';
import { Page } from '../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../parts/words/words.tsx';
import styles from './night-list.module.css';

export function NightList() {
  const words = useWords().night;
  const nights = useCall('nights', (client, signal) => client.nights.list(undefined, { signal }), {
    topics: ['nights'],
  });
  const add = (
    <LinkButton href="/new" weight="main">
      {words.add}
    </LinkButton>
  );
  return (
    <Page title={words.title} intro={words.intro} help={words.help} actions={nights.data?.length === 0 ? null : add}>
      <Loaded reading={nights}>
        {(lines) =>
          lines.length === 0 ? (
            <EmptyState title={words.emptyTitle} text={words.emptyText} action={add} />
          ) : (
            <ul className={styles.list}>
              {lines.map((line) => (
                <li key={line.night.id}>
                  <NightRow line={line} />
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
    </Page>
  );
}

function NightRow({ line }: { line: NightLine }) {
  const words = useWords().night;
  const { date } = useFormats();
  const { night, athletes, judges, stations, heats } = line;
  const day = startOfDay(night.date);
  return (
    <Link href={`/${night.id}`} className={styles.row}>
      <span className={styles.name}>
        <bdi>{night.name}</bdi>
      </span>
      <span>{day === null ? night.date : date(day)}</span>
      <span className={styles.soft}>
        {words.summary(athletes, judges)}; {words.stations(stations)}
      </span>
      <span className={styles.soft}>{words.heats(heats)}</span>
    </Link>
  );
}
