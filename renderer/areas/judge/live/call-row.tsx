import type { SetState } from '../../../../shared-types/log/state.ts';
import type { SetClock } from '../../../link/clock.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './call-row.module.css';
import { ClockText } from './clock-text.tsx';
import type { Intent } from './decide.ts';
import { PressButton } from './press-button.tsx';
import type { Hit } from './use-live-set.ts';

interface CallRowProps {
  readonly state: SetState;
  readonly clock: SetClock;
  readonly hit: Hit;
  /** An open set ends only on purpose: its finish stands among the calls. */
  readonly canFinish: boolean;
  readonly onPress: (intent: Intent, timeStamp: number) => void;
}

/** The calls beside counted and the faults. */
export function CallRow({ state, clock, hit, canFinish, onPress }: CallRowProps) {
  const words = useWords().judge.live;
  const { duration } = useFormats();
  const running = state.breaks.at(-1);
  const since = running?.end === null ? running.start : null;
  const turnOf = (place: string): number => (hit.place === place ? hit.turn : 0);
  const button = (intent: Intent, place: string, text: string) => (
    <PressButton
      className={styles.call}
      turn={turnOf(place)}
      data-call={place}
      onPress={(timeStamp) => onPress(intent, timeStamp)}
    >
      {text}
    </PressButton>
  );
  return (
    <section className={styles.row} aria-label={words.calls} data-five={canFinish}>
      {button({ kind: 'no-rep', faults: [] }, 'no-rep', words.noRepLater)}
      {button({ kind: 'caution' }, 'caution', words.caution)}
      {button({ kind: 'last-was-no-rep' }, 'last-was-no-rep', words.lastNoRep)}
      <PressButton
        className={styles.call}
        turn={turnOf('break')}
        data-call="break"
        data-on={since !== null}
        onPress={(timeStamp) => onPress({ kind: 'break' }, timeStamp)}
      >
        {since === null ? (
          words.breakStart
        ) : (
          <span className={styles.break}>
            {words.breakEnd}
            <ClockText read={() => duration(Math.max(0, clock.now() - since), 0)} running label={words.breakFor} />
          </span>
        )}
      </PressButton>
      {canFinish ? button({ kind: 'finish' }, 'finish', words.finish) : null}
    </section>
  );
}
