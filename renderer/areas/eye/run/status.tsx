import { useSyncExternalStore } from 'react';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { useCallText } from '../use-call-text.ts';
import type { DrillRun, Phase } from './drill-run.ts';
import styles from './status.module.css';
import { useReached } from './use-reached.ts';

interface StatusProps {
  readonly run: DrillRun;
  readonly phase: Phase;
  readonly sheet: StandardSheet;
  readonly onBegin: () => void;
  readonly onResume: () => void;
  readonly onResult: () => void;
}

/** What is going on, in a line or two, and the button where something waits for the judge. */
export function Status({ run, phase, sheet, onBegin, onResume, onResult }: StatusProps) {
  const words = useWords().eye;
  const refused = useSyncExternalStore(run.log.refused.subscribe, run.log.refused.get);
  const waiting = useSyncExternalStore(run.log.waiting.subscribe, run.log.waiting.get);
  return (
    <div className={styles.status}>
      <Words run={run} phase={phase} sheet={sheet} onBegin={onBegin} onResume={onResume} onResult={onResult} />
      {refused !== null ? (
        <p className={styles.problem} role="alert">
          {words.drill.refused(refused)}
        </p>
      ) : waiting > 20 ? (
        <p className={styles.soft}>{words.drill.waiting(waiting)}</p>
      ) : null}
    </div>
  );
}

function Words({ run, phase, sheet, onBegin, onResume, onResult }: StatusProps) {
  const words = useWords().eye;
  const say = useCallText(sheet);
  const startAt = phase.kind === 'rep' || phase.kind === 'stream' ? phase.startAt : null;
  const begun = useReached(startAt);
  const seen = useReached(phase.kind === 'rep' ? phase.startAt + phase.shown.body.durationMs : null);
  const { kind } = run.log.drill.task;
  switch (phase.kind) {
    case 'ready':
      return (
        <div className={styles.before}>
          {words.drill.before[kind].map((line) => (
            <p key={line}>{line}</p>
          ))}
          <p className={styles.soft}>{words.seeing}</p>
          <Button weight="main" large onClick={onBegin}>
            {words.drill.begin}
          </Button>
        </div>
      );
    case 'making':
      return <p role="status">{words.drill.making}</p>;
    case 'rep':
      return (
        <p className={styles.line} role="status">
          {phase.call !== null
            ? words.drill.noted(say(phase.call))
            : seen
              ? words.drill.yours
              : begun
                ? words.drill.watch
                : words.drill.ready}
        </p>
      );
    case 'stream': {
      const last = phase.calls.at(-1);
      return (
        <p className={styles.line} role="status">
          {last !== undefined
            ? words.drill.lastCall(phase.calls.length, say(last))
            : begun
              ? words.drill.noCall
              : words.drill.ready}
        </p>
      );
    }
    case 'paused':
      return (
        <div className={styles.before} role="status">
          <p>{words.drill.paused[phase.why]}</p>
          <Button weight="main" large onClick={onResume}>
            {words.drill.resume}
          </Button>
        </div>
      );
    case 'done':
      return (
        <div className={styles.before} role="status">
          <h2>{words.drill.done}</h2>
          <p>{words.drill.doneText(run.log.state.get().trials.filter((trial) => !trial.spoilt).length)}</p>
          <Button weight="main" large onClick={onResult}>
            {words.drill.seeResult}
          </Button>
        </div>
      );
    case 'feedback':
      return null;
  }
}
