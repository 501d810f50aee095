import { useState } from 'react';
import { useLocation } from 'wouter';
import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import type { SetLine } from '../../../../shared-types/contract/sets.ts';
import { foldSet } from '../../../../shared-types/log/fold.ts';
import type { Person } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import type { SetStart } from '../../../link/store.ts';
import { CautionsOnce } from '../../../parts/cautions/cautions.tsx';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { useConfirm } from '../../../parts/controls/confirm.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { failureOf } from '../../../parts/desk/failure.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { SetRow, SetRows } from '../sets/set-row.tsx';
import { startAgain } from './again.ts';
import { type Choice, firstChoice, toLastSetup } from './choice.ts';
import styles from './home-screen.module.css';
import { SetForm } from './set-form.tsx';

const latestShown = 4;

/** The home of the area: set up a set, take up one that has not ended, look back at the latest. */
export function HomeScreen() {
  const words = useWords().judge;
  const { ready } = useSettings();
  const form = useCall(
    'judge home',
    async (client, signal) => {
      const [people, sheets] = await Promise.all([
        client.people.list({ archived: false }, { signal }),
        client.standards.list(undefined, { signal }),
      ]);
      return { people, sheets };
    },
    { topics: ['people', 'standards'] },
  );
  const sets = useCall(
    'judge latest',
    async (client, signal) => {
      const [unfinished, latest] = await Promise.all([
        client.sets.unfinished(undefined, { signal }),
        client.sets.list({ filter: { practice: 'with' }, after: null, limit: latestShown + 4 }, { signal }),
      ]);
      const open = new Set(unfinished.map((line) => line.id));
      const ended = latest.lines.filter((line) => !open.has(line.id) && line.startedAt !== null);
      return { unfinished, latest: ended.slice(0, latestShown) };
    },
    { topics: ['sets'] },
  );
  const nobody = form.data?.people.length === 0;
  return (
    <Page
      title={nobody ? words.setup.firstTitle : words.setup.title}
      intro={nobody ? words.setup.firstIntro : undefined}
      help={words.setup.help}
      actions={nobody ? null : <LinkButton href="/sets">{words.setup.allSets}</LinkButton>}
    >
      <CautionsOnce />
      <div className={styles.columns}>
        <div className={styles.main}>
          {sets.data === undefined || sets.data.unfinished.length === 0 ? null : (
            <Unfinished lines={sets.data.unfinished} />
          )}
          {ready ? (
            <Loaded reading={form}>
              {({ people, sheets }) =>
                sheets.length === 0 ? (
                  <EmptyState title={words.setup.noSheets} />
                ) : (
                  <Setup
                    key={sheets.map((sheet) => `${sheet.id} ${sheet.version}`).join()}
                    people={people}
                    sheets={sheets}
                  />
                )
              }
            </Loaded>
          ) : null}
        </div>
        {sets.data === undefined || sets.data.latest.length === 0 ? null : <Latest lines={sets.data.latest} />}
      </div>
    </Page>
  );
}

function Setup({ people, sheets }: { people: readonly PersonLine[]; sheets: readonly StandardSheet[] }) {
  const { settings, put } = useSettings();
  const link = useLink();
  const { tellFailure } = useNotices();
  const [, go] = useLocation();
  const [busy, setBusy] = useState(false);
  const [first] = useState(() =>
    firstChoice(settings.lastSetup, sheets, new Set(people.map((line) => line.person.id))),
  );
  const start = async (begun: SetStart, choice: Choice, toSave: readonly Person[]): Promise<void> => {
    setBusy(true);
    try {
      for (const person of toSave) await link.client.people.save(person);
      void put({ lastSetup: toLastSetup(choice) });
      go('/brief', { state: begun });
    } catch (error) {
      tellFailure(failureOf(error));
    } finally {
      setBusy(false);
    }
  };
  return (
    <SetForm
      first={first}
      people={people}
      sheets={sheets}
      busy={busy}
      onStart={(begun, choice, toSave) => void start(begun, choice, toSave)}
    />
  );
}

/** Sets that began and have not ended: go on, the clock still right, or end them where they stopped. */
function Unfinished({ lines }: { lines: readonly SetLine[] }) {
  const words = useWords().judge.setup;
  const formats = useFormats();
  const link = useLink();
  const confirm = useConfirm();
  const { tell, tellFailure } = useNotices();
  const [, go] = useLocation();
  const end = async (line: SetLine): Promise<void> => {
    const sure = await confirm({
      title: words.endThereAsk(line.athlete.name),
      text: words.endThereText,
      deed: words.endThere,
    });
    if (!sure) return;
    try {
      const { events } = await link.client.sets.get({ id: line.id });
      link.outbox.put({ kind: 'finish', set: line.id, at: foldSet(line.id, events).lastAt });
      tell(words.endedThere);
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  return (
    <section className={styles.unfinished} aria-labelledby="judge-unfinished">
      <h2 id="judge-unfinished">{words.unfinished}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line.id} className={styles.open}>
            <p>
              <strong>
                <bdi>{line.athlete.name}</bdi>, {line.sheet.station}
              </strong>
              <br />
              <span className={styles.soft}>
                {words.unfinishedSince(formats.dateTime(line.startedAt ?? line.createdAt), line.counted)}
              </span>
            </p>
            <div className={styles.deeds}>
              <Button weight="main" onClick={() => go(`/set/${line.id}`)}>
                {words.goOn}
              </Button>
              <Button onClick={() => void end(line)}>{words.endThere}</Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Latest({ lines }: { lines: readonly SetLine[] }) {
  const words = useWords().judge.setup;
  const link = useLink();
  const { tellFailure } = useNotices();
  const [, go] = useLocation();
  const again = async (id: string): Promise<void> => {
    try {
      go('/brief', { state: await startAgain(link.client, id) });
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  return (
    <aside className={styles.latest} aria-labelledby="judge-latest">
      <h2 id="judge-latest">{words.latest}</h2>
      <SetRows>
        {lines.map((line) => (
          <SetRow
            key={line.id}
            line={line}
            actions={
              <Button
                aria-label={words.againFor(line.athlete.name, line.sheet.station)}
                onClick={() => void again(line.id)}
              >
                {words.again}
              </Button>
            }
          />
        ))}
      </SetRows>
    </aside>
  );
}
