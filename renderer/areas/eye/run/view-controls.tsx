import { useWords } from '../../../parts/words/words.tsx';
import { type SpotName, spotNames } from '../places.ts';
import { moved, type Viewpoint } from '../viewpoint.ts';
import styles from './view-controls.module.css';

interface ViewControlsProps {
  readonly view: Viewpoint;
  readonly onMove: (view: Viewpoint) => void;
  readonly onSpot: (name: SpotName) => void;
  /** The key of a place, where no call has taken it. */
  readonly keyOf: (index: number) => string | null;
}

/** Where the judge stands: places one press away, and steps for those who do not drag. */
export function ViewControls({ view, onMove, onSpot, keyOf }: ViewControlsProps) {
  const words = useWords().eye.drill;
  const step = (label: string, sign: string, by: Partial<Viewpoint>) => (
    <button
      type="button"
      className={styles.step}
      aria-label={label}
      title={label}
      onClick={() => onMove(moved(view, by))}
    >
      {sign}
    </button>
  );
  return (
    <section className={styles.controls} aria-label={words.view} title={words.walkHint}>
      <div className={styles.spots}>
        {spotNames.map((name, index) => (
          <button key={name} type="button" className={styles.spot} onClick={() => onSpot(name)}>
            {words.spots[name]}
            {keyOf(index) === null ? null : <kbd className={styles.key}>{keyOf(index)}</kbd>}
          </button>
        ))}
      </div>
      <div className={styles.steps}>
        {step(words.turnLeft, '←', { bearing: -15 })}
        {step(words.turnRight, '→', { bearing: 15 })}
        {step(words.eyesUp, '↑', { height: 0.2 })}
        {step(words.eyesDown, '↓', { height: -0.2 })}
        {step(words.nearer, '+', { distance: -0.4 })}
        {step(words.farther, '−', { distance: 0.4 })}
      </div>
    </section>
  );
}
