import { useEffect, useState } from 'react';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import styles from './replay-controls.module.css';
import type { Replayed } from './use-replay.ts';

interface ReplayControlsProps {
  readonly duration: number;
  readonly replay: Replayed;
}

/** A step: two pictures of a usual film, seconds. */
const STEP = 1 / 15;
const SHOWN_EVERY_MS = 120;

/** Slow, still, step by step. */
export function ReplayControls({ duration, replay }: ReplayControlsProps) {
  const { playing, timeAt, speed, still, play, stand, setSpeed } = replay;
  const words = useWords().eye.drill.feedback;
  const [, redraw] = useState(0);
  useEffect(() => {
    if (!playing) return;
    const timer = setInterval(() => redraw((count) => count + 1), SHOWN_EVERY_MS);
    return () => clearInterval(timer);
  }, [playing]);
  const t = timeAt(performance.now());
  return (
    <div className={styles.controls}>
      {still ? <p className={styles.soft}>{words.still}</p> : null}
      <div className={styles.row}>
        <button
          type="button"
          className={styles.step}
          onClick={() => stand(t - STEP)}
          aria-label={words.back}
          title={words.back}
        >
          ‹
        </button>
        <button type="button" className={styles.play} onClick={() => (playing ? stand(t) : play())}>
          {playing ? words.pausePlay : words.play}
        </button>
        <button
          type="button"
          className={styles.step}
          onClick={() => stand(t + STEP)}
          aria-label={words.forward}
          title={words.forward}
        >
          ›
        </button>
        <input
          type="range"
          className={styles.time}
          min={0}
          max={duration}
          step={0.01}
          value={t}
          aria-label={words.time}
          aria-valuetext={words.at(t)}
          onChange={(event) => stand(Number(event.target.value))}
        />
      </div>
      <Segmented
        label={words.speed}
        bare
        value={String(speed)}
        options={[
          { value: '0.25', label: words.speeds.quarter },
          { value: '0.5', label: words.speeds.half },
          { value: '1', label: words.speeds.full },
        ]}
        onChange={(value) => setSpeed(Number(value))}
      />
    </div>
  );
}
