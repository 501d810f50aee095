import { useState } from 'react';
import { useLocation } from 'wouter';
import type { PersonLine } from '../../../../shared-types/contract/people.ts';
import type { Person } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { failureOf } from '../../../parts/desk/failure.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { newId } from '../../../parts/desk/new-id.ts';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useDraft } from '../../../parts/desk/use-draft.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { firstChoice, shownSheets, toDrill, withSheet } from './choice.ts';
import { DrillForm } from './drill-form.tsx';
import styles from './home-screen.module.css';
import { JudgeField } from './judge-field.tsx';
import { JudgeStanding } from './judge-standing.tsx';

/** The home of the area: choose a drill; beside it how the judge stands. */
export function HomeScreen() {
  const words = useWords().eye;
  const { ready } = useSettings();
  const form = useCall(
    'eye home',
    async (client, signal) => {
      const [people, sheets] = await Promise.all([
        client.people.list({ archived: false }, { signal }),
        client.standards.list(undefined, { signal }),
      ]);
      return { people, sheets: shownSheets(sheets) };
    },
    { topics: ['people', 'standards'] },
  );
  return (
    <Page
      title={words.title}
      intro={words.intro}
      help={words.help}
      actions={
        <>
          <LinkButton href="/drills" weight="quiet">
            {words.home.allDrills}
          </LinkButton>
          <LinkButton href="/ready" weight="quiet">
            {words.home.readyAll}
          </LinkButton>
        </>
      }
    >
      {ready ? (
        <Loaded reading={form}>
          {({ people, sheets }) =>
            sheets.length === 0 ? (
              <EmptyState title={words.setup.noStation} />
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
    </Page>
  );
}

/** The judge of the last set, else the only judge there is. */
function likelyJudge(people: readonly PersonLine[], last: string | null | undefined): string | null {
  const judges = people.filter((line) => line.person.judge);
  if (judges.some((line) => line.person.id === last)) return last ?? null;
  return judges.length === 1 ? (judges[0]?.person.id ?? null) : null;
}

function personNamed(name: string): Person {
  const base = { id: newId(), name: name.trim(), nickname: '', notes: '', archivedAt: null, createdAt: Date.now() };
  return { ...base, athlete: false, judge: true };
}

function Setup({ people, sheets }: { people: readonly PersonLine[]; sheets: readonly StandardSheet[] }) {
  const words = useWords().eye;
  const link = useLink();
  const { settings } = useSettings();
  const { tellFailure } = useNotices();
  const [, go] = useLocation();
  // Kept while the program runs: the next drill begins with the choices of the last.
  const draft = useDraft('eye choice', firstChoice(sheets, likelyJudge(people, settings.lastSetup?.judge)));
  const known = sheets.some((item) => item.id === draft.value.sheet);
  const choice = known ? draft.value : withSheet(draft.value, sheets[0]);
  const setChoice = draft.set;
  const [added, setAdded] = useState<readonly Person[]>([]);
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const lines = [...added.map((person) => ({ person, setsAsAthlete: 0, setsAsJudge: 0 })), ...people];
  const sheet = sheets.find((item) => item.id === choice.sheet);

  const start = async (): Promise<void> => {
    setTried(true);
    if (sheet === undefined) return;
    const [seed = 0] = crypto.getRandomValues(new Uint32Array(1));
    const drill = toDrill(choice, sheet, newId(), Date.now(), seed);
    if (drill === null) return;
    setBusy(true);
    try {
      const fresh = added.find((person) => person.id === drill.judge);
      const person = people.find((line) => line.person.id === drill.judge)?.person;
      if (fresh !== undefined) await link.client.people.save(fresh);
      else if (person !== undefined && !person.judge) await link.client.people.save({ ...person, judge: true });
      await link.client.drills.create(drill);
      go(`/drill/${drill.id}`);
    } catch (error) {
      tellFailure(failureOf(error));
      setBusy(false);
    }
  };
  return (
    <div className={styles.columns}>
      <DrillForm choice={choice} sheets={sheets} busy={busy} onChange={setChoice} onStart={() => void start()}>
        <JudgeField
          people={lines}
          value={choice.judge}
          error={tried && choice.judge === null ? words.setup.noJudge : undefined}
          onChange={(judge) => setChoice({ ...choice, judge })}
          onAdd={(name) => {
            const person = personNamed(name);
            setAdded((before) => [person, ...before]);
            setChoice({ ...choice, judge: person.id });
          }}
        />
      </DrillForm>
      <aside className={styles.aside} aria-label={words.home.latest}>
        <p className={styles.seeing}>{words.seeing}</p>
        {choice.judge === null || added.some((person) => person.id === choice.judge) ? null : (
          <JudgeStanding judge={choice.judge} sheet={choice.sheet} />
        )}
      </aside>
    </div>
  );
}
