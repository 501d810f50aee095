import { useState } from 'react';
import { useLocation } from 'wouter';
import type { SetState } from '../../../../shared-types/log/state.ts';
import { calledName } from '../../../../shared-types/people.ts';
import type { SetLog, SetView } from '../../../link/set-log.ts';
import type { SetStart } from '../../../link/store.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { saveFile } from '../../../parts/controls/save-file.ts';
import { failureOf } from '../../../parts/desk/failure.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { startAgain } from '../home/again.ts';
import { LinkState } from '../live/link-state.tsx';
import type { ScreenClock } from '../set-clocks.ts';
import { useGoalText } from '../use-goal-text.ts';
import { AnswerCard } from './answer-card.tsx';
import { AppealCard } from './appeal-card.tsx';
import { CorrectDialog } from './correct-dialog.tsx';
import { CostTable } from './cost-table.tsx';
import { ExplainCard } from './explain-card.tsx';
import styles from './finished-screen.module.css';
import { HistoryCard } from './history-card.tsx';
import { KeyFigures } from './key-figures.tsx';
import { HowComputed, LedgerCard, ReasonsCard, RibbonCard } from './picture-cards.tsx';
import type { SetDeeds } from './set-deeds.ts';
import { PrintedLines, SignOffCard } from './sign-off-card.tsx';

interface FinishedScreenProps {
  readonly start: SetStart;
  readonly view: SetView;
  readonly state: SetState;
  readonly clock: ScreenClock;
  readonly log: SetLog;
}

/** A set that has ended: the answer first, then the evidence, then what can still be put right. */
export function FinishedScreen({ start, view, state, clock, log }: FinishedScreenProps) {
  const words = useWords().judge;
  const formats = useFormats();
  const goalText = useGoalText();
  const link = useLink();
  const { tell, tellFailure } = useNotices();
  const [, go] = useLocation();
  const [picked, setPicked] = useState<number | null>(null);
  const { setup, sheet } = start;
  const { id } = setup;
  const report = useCall(`set report ${id}`, (client, signal) => client.reports.set({ id }, { signal }), {
    topics: ['sets'],
  });
  const people = useCall('people of appeals', (client, signal) => client.people.list({ archived: true }, { signal }), {
    topics: ['people'],
  });
  const nameOf = (person: string | null): string => {
    if (person === null) return '';
    const known = [start.athlete, start.judge, ...(people.data ?? []).map((line) => line.person)];
    const found = known.find((item) => item.id === person);
    return found === undefined ? '' : calledName(found);
  };
  const deeds: SetDeeds = {
    start,
    state,
    log: view.events,
    now: clock.now,
    nameOf,
    write: (drafts) => {
      for (const draft of drafts) link.outbox.put({ ...draft, set: id });
    },
  };
  const athlete = calledName(start.athlete);
  const save = async (format: 'csv' | 'json'): Promise<void> => {
    try {
      const file = await link.client.sets.export({ filter: { practice: 'with' }, ids: [id], format });
      saveFile(file);
      tell(words.sets.exported(file.fileName));
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  const again = async (): Promise<void> => {
    try {
      go('/brief', { state: await startAgain(link.client, id) });
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  const abandon = view.events.findLast((event) => event.kind === 'abandon');
  const facts = [
    goalText(setup.goal, sheet),
    words.conditions(setup.loadKg, setup.heightM),
    words.before[setup.before],
    words.finished.judgedBy(calledName(start.judge)),
    state.startedAt === null ? '' : formats.dateTime(state.startedAt),
    ...setup.tags,
  ];
  return (
    <Page
      title={words.finished.title(sheet.station, athlete)}
      intro={facts.filter((fact) => fact !== '').join(' · ')}
      help={words.finished.help}
      above={
        <div className={styles.above}>
          <LinkButton href="/" weight="quiet">
            <ArrowLeft />
            {words.setup.title}
          </LinkButton>
          <LinkState log={log} awake />
        </div>
      }
      actions={
        <>
          <Button weight="main" onClick={() => void again()}>
            {words.finished.actions.again}
          </Button>
          <Button onClick={() => window.print()}>{words.finished.actions.print}</Button>
        </>
      }
    >
      <div className={styles.body}>
        {setup.practice ? <p className={styles.note}>{words.finished.practice}</p> : null}
        {state.phase === 'abandoned' ? (
          <p className={styles.note}>
            {abandon?.kind === 'abandon' && abandon.reason !== ''
              ? words.finished.abandonedWhy(abandon.reason)
              : words.finished.abandoned}
          </p>
        ) : null}
        <ExplainCard deeds={deeds} />
        <Loaded reading={report}>
          {(data) => (
            <>
              <AnswerCard report={data} />
              <KeyFigures report={data} goal={setup.goal} />
              <RibbonCard deeds={deeds} onPick={setPicked} picked={picked} />
              <div className={styles.two}>
                <ReasonsCard report={data} />
                <LedgerCard report={data} />
              </div>
              <CostTable report={data} sheet={sheet} />
              <HowComputed report={data} />
            </>
          )}
        </Loaded>
        <div className={styles.two}>
          <AppealCard deeds={deeds} people={people.data ?? []} />
          <SignOffCard deeds={deeds} />
        </div>
        <HistoryCard deeds={deeds} onCorrect={() => setPicked(Math.max(0, state.attempts.length - 1))} />
        <div className={styles.files}>
          <Button onClick={() => void save('csv')}>{words.finished.actions.csv}</Button>
          <Button onClick={() => void save('json')}>{words.finished.actions.json}</Button>
          <LinkButton href="/sets">{words.finished.actions.all}</LinkButton>
        </div>
        <PrintedLines start={start} />
      </div>
      <CorrectDialog
        deeds={deeds}
        people={people.data ?? []}
        picked={picked}
        onPick={setPicked}
        onClose={() => setPicked(null)}
      />
    </Page>
  );
}
