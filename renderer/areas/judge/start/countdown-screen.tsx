import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { calledName } from '../../../../shared-types/people.ts';
import { eventTime } from '../../../link/clock.ts';
import type { SetStart } from '../../../link/store.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { useFloor } from '../../../parts/shell/floor.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { useSounds } from '../sound/use-sounds.ts';
import { useGoalText } from '../use-goal-text.ts';
import { useWakeLock } from '../use-wake-lock.ts';
import { secondsLeft, ticks } from './countdown.ts';
import styles from './countdown-screen.module.css';

interface CountdownScreenProps {
  readonly seconds: number;
  /** Time stamp of the press that began it, on the page's clock. */
  readonly begun: number;
  readonly start: SetStart;
  readonly onGo: (timeStamp: number) => void;
  readonly onCancel: () => void;
}

/** The seconds before go, seen and heard. Go is the very end of the countdown, whenever the timer gets to say so. */
export function CountdownScreen({ seconds, begun, start, onGo, onCancel }: CountdownScreenProps) {
  const words = useWords().judge.setup.countdown;
  const goalText = useGoalText();
  const sounds = useSounds();
  const frame = useRef<HTMLElement>(null);
  const [left, setLeft] = useState(seconds);
  useFloor();
  useWakeLock(true);
  useEffect(() => frame.current?.focus(), []);

  const tell = useEffectEvent((second: number) => {
    setLeft(second);
    if (ticks(second)) {
      sounds.play('tick');
      if (second <= 3) sounds.say(words.left(second));
    }
  });
  const end = useEffectEvent(() => onGo(begun + seconds * 1000));
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let told = Number.NaN;
    const step = (): void => {
      const elapsed = performance.now() - begun;
      const second = secondsLeft(seconds, elapsed);
      if (second !== told) {
        told = second;
        if (second > 0) tell(second);
      }
      if (second === 0) return end();
      timer = setTimeout(step, Math.max(1, (seconds - second + 1) * 1000 - elapsed));
    };
    step();
    return () => clearTimeout(timer);
  }, [begun, seconds]);

  const onKey = useEffectEvent((event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    onCancel();
  });
  useEffect(() => {
    const listener = (event: KeyboardEvent): void => onKey(event);
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, []);

  return (
    <section ref={frame} className={styles.screen} tabIndex={-1} aria-label={words.title}>
      <h1 className={styles.title}>
        <bdi>{calledName(start.athlete)}</bdi>
      </h1>
      <p className={styles.task}>
        {start.sheet.station}, {goalText(start.setup.goal, start.sheet)}
      </p>
      <p className={styles.left} role="timer" aria-label={words.spoken(left)} data-near={left <= 3}>
        {words.left(left)}
      </p>
      <div className={styles.actions}>
        <Button large onClick={onCancel}>
          {words.cancel}
        </Button>
        <Button large weight="main" onClick={(event) => onGo(eventTime(event.nativeEvent))}>
          {words.skip}
        </Button>
      </div>
    </section>
  );
}
