import { useEffect, useRef } from 'react';
import { calledName } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { eventTime } from '../../../link/clock.ts';
import type { SetStart } from '../../../link/store.ts';
import { CautionsList, CautionsOnce } from '../../../parts/cautions/cautions.tsx';
import { Button } from '../../../parts/controls/button.tsx';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { useGoalText } from '../use-goal-text.ts';
import styles from './brief-screen.module.css';

interface BriefScreenProps {
  readonly start: SetStart;
  readonly countdownS: number;
  readonly onCountdown: (timeStamp: number) => void;
  readonly onGoNow: (timeStamp: number) => void;
  readonly onBack: () => void;
}

/** The sheet as the judge reads it to the athlete, and what the judge looks at. */
export function BriefScreen({ start, countdownS, onCountdown, onGoNow, onBack }: BriefScreenProps) {
  const words = useWords().judge;
  const { rulebook } = useWords().common;
  const brief = words.setup.brief;
  const goalText = useGoalText();
  const { setup, sheet } = start;
  const main = useRef<HTMLButtonElement>(null);
  useEffect(() => main.current?.focus({ preventScroll: true }), []);
  const task = [goalText(setup.goal, sheet), words.conditions(setup.loadKg, setup.heightM)];
  return (
    <Page
      title={brief.title}
      narrow
      help={words.setup.briefHelp}
      above={
        <Button weight="quiet" onClick={onBack}>
          <ArrowLeft />
          {brief.back}
        </Button>
      }
    >
      <CautionsOnce />
      <article className={styles.card}>
        <p className={styles.who}>
          <bdi>{calledName(start.athlete)}</bdi>, {sheet.station}
        </p>
        <p className={styles.task}>{task.filter((part) => part !== '').join(', ')}</p>
        <p className={styles.summary}>{sheet.summary}</p>
        <h2>{brief.noRepIf}</h2>
        <ul className={styles.faults}>
          {sheet.faults
            .toSorted((one, other) => other.bodyHeight - one.bodyHeight)
            .map((fault) => (
              <li key={fault.code}>
                <strong>{fault.name}.</strong> {fault.standard}
              </li>
            ))}
        </ul>
        <p>
          <strong>
            <Consequence sheet={sheet} />
          </strong>
        </p>
        <h2>{brief.cautions}</h2>
        <ul className={styles.plain}>
          {sheet.cautions.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
        <p className={styles.soft}>{rulebook}</p>
      </article>
      <details className={styles.more}>
        <summary>{brief.youStand}</summary>
        <dl className={styles.stand}>
          {sheet.faults.map((fault) => (
            <div key={fault.code}>
              <dt>{fault.name}</dt>
              <dd>
                {fault.stand} {fault.look} <em>{brief.cue(fault.cue)}</em>
              </dd>
            </div>
          ))}
        </dl>
      </details>
      {sheet.equipment.length === 0 ? null : (
        <details className={styles.more}>
          <summary>{brief.equipment}</summary>
          <ul className={styles.plain}>
            {sheet.equipment.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </details>
      )}
      <details className={styles.more}>
        <summary>{brief.allCautions}</summary>
        <CautionsList />
      </details>
      <div className={styles.start}>
        <Button ref={main} weight="main" large onClick={(event) => onCountdown(eventTime(event.nativeEvent))}>
          {brief.countdown(countdownS)}
        </Button>
        {countdownS === 0 ? null : (
          <Button onClick={(event) => onGoNow(eventTime(event.nativeEvent))}>{brief.goNow}</Button>
        )}
      </div>
    </Page>
  );
}

function Consequence({ sheet }: { sheet: StandardSheet }) {
  const words = useWords().judge.setup.brief.consequences;
  const { metres, seconds } = useFormats();
  const { consequence } = sheet;
  switch (consequence.kind) {
    case 'repeat':
      return words.repeat;
    case 'metres-back':
      return words.metresBack(metres(consequence.metres, consequence.metres % 1 === 0 ? 0 : 1));
    case 'seconds-added':
      return words.secondsAdded(seconds(consequence.seconds, consequence.seconds % 1 === 0 ? 0 : 1));
  }
}
