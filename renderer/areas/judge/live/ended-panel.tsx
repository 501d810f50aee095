import { tally } from '../../../../shared-types/log/fold.ts';
import type { Goal } from '../../../../shared-types/log/setup.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './ended-panel.module.css';

interface EndedPanelProps {
  readonly goal: Goal;
  readonly state: SetState;
  readonly onSummary: () => void;
  readonly onSlip: (timeStamp: number) => void;
  readonly onLastNoRep: (timeStamp: number) => void;
}

/** The set has just ended: its time, the way to the summary, and the way back if the last call was wrong. */
export function EndedPanel({ goal, state, onSummary, onSlip, onLastNoRep }: EndedPanelProps) {
  const words = useWords().judge.live.ended;
  const live = useWords().judge.live;
  const counts = tally(state);
  const byCall = state.phase === 'finished' && state.attempts.at(-1)?.at === state.endedAt;
  const title =
    state.phase === 'abandoned'
      ? words.abandoned
      : goal.kind === 'clock'
        ? words.timeUp
        : goal.kind === 'open' || (goal.kind === 'reps' && !byCall)
          ? words.finished
          : words.reached;
  return (
    <section className={styles.panel} aria-live="polite">
      <h2 className={styles.title}>{title}</h2>
      <p className={styles.tally}>
        {live.countedAll(counts.counted)}, {live.noReps(counts.noReps)}
      </p>
      <Button weight="main" large onClick={onSummary} className={styles.summary}>
        {words.summary}
      </Button>
      {state.phase === 'finished' ? (
        <div className={styles.wrong}>
          <p>{goal.kind === 'clock' ? words.wrong : `${words.wrong} ${words.runsOn}`}</p>
          <div className={styles.ways}>
            <Button onClick={(event) => onSlip(event.timeStamp)}>{words.slip}</Button>
            <Button onClick={(event) => onLastNoRep(event.timeStamp)}>{live.lastNoRep}</Button>
          </div>
        </div>
      ) : null}
    </section>
  );
}
