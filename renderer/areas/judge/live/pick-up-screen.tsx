import { calledName } from '../../../../shared-types/people.ts';
import type { SetClock } from '../../../link/clock.ts';
import type { SetStart } from '../../../link/store.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './pick-up-screen.module.css';

interface PickUpScreenProps {
  readonly start: SetStart;
  readonly clock: SetClock;
  readonly lastAt: number;
  readonly onGoOn: () => void;
  readonly onEnd: () => void;
}

/** A set that began, was left, and is opened again after a long time. */
export function PickUpScreen({ start, clock, lastAt, onGoOn, onEnd }: PickUpScreenProps) {
  const words = useWords().judge.setup.pickUp;
  const { duration } = useFormats();
  return (
    <section className={styles.screen}>
      <h1>{words.title}</h1>
      <p>
        <bdi>{calledName(start.athlete)}</bdi>, {start.sheet.station}
      </p>
      <p>{words.still(duration(clock.now() - lastAt, 0))}</p>
      {clock.behind ? <p>{words.behind}</p> : null}
      <div className={styles.deeds}>
        <Button weight="main" large onClick={onGoOn}>
          {words.goOn}
        </Button>
        <Button large onClick={onEnd}>
          {words.end}
        </Button>
      </div>
    </section>
  );
}
