import { tally } from '../../../../shared-types/log/fold.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import type { SetClock } from '../../../link/clock.ts';
import type { SetStart } from '../../../link/store.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { useGoalText } from '../use-goal-text.ts';
import { ClockText } from './clock-text.tsx';
import styles from './score.module.css';

interface ScoreProps {
  readonly start: SetStart;
  readonly state: SetState;
  readonly clock: SetClock;
}

/** The two largest things on the screen: the count and the clock. */
export function Score({ start, state, clock }: ScoreProps) {
  const words = useWords().judge.live;
  const { number, duration } = useFormats();
  const goalText = useGoalText();
  const { goal } = start.setup;
  const counts = tally(state);
  const running = state.phase === 'running';
  const byDistance = goal.kind === 'metres';
  const big = byDistance ? number(counts.metres, counts.metres % 1 === 0 ? 0 : 1) : number(counts.counted);
  const read = (): string => {
    const now = state.endedAt ?? clock.now();
    return duration(goal.kind === 'clock' ? Math.max(0, goal.milliseconds - now) : now, 1);
  };
  const last = state.attempts.findLast((attempt) => !attempt.withdrawn && attempt.verdict !== 'no-rep');
  const pace = last === undefined || counts.counted < 2 ? null : last.at / counts.counted / 1000;
  const { consequence } = start.sheet;
  const added = consequence.kind === 'seconds-added' ? counts.noReps * consequence.seconds : 0;
  return (
    <section className={styles.score}>
      <p className={styles.count}>
        <span className="visually-hidden">{words.count} </span>
        <output className={styles.big} style={{ '--length': big.length }}>
          {big}
          {byDistance ? <span className={styles.unit}>m</span> : null}
        </output>
      </p>
      <div className={styles.side}>
        <ClockText read={read} running={running} label={words.clock} className={styles.clock} />
        <p className={styles.facts}>
          {goal.kind === 'clock' ? (
            <span>{words.timeLeft}</span>
          ) : goal.kind === 'open' ? null : (
            <span>{words.of(goalText(goal, start.sheet))}</span>
          )}
          {byDistance ? <span>{words.reps(counts.counted, start.sheet.repsName)}</span> : null}
          {pace === null ? null : <span>{words.pace(pace)}</span>}
        </p>
        <p className={styles.facts}>
          <span className={styles.noReps}>{words.noReps(counts.noReps)}</span>
          {counts.cautions === 0 ? null : <span>{words.cautions(counts.cautions)}</span>}
          {added === 0 ? null : <span>{words.added(added)}</span>}
        </p>
      </div>
    </section>
  );
}
