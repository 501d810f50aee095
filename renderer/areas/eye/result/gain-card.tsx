import type { PlaceGain } from '../../../../shared-types/contract/drills/scores.ts';
import type { MovementName } from '../../../../shared-types/motion/specification.ts';
import { Card } from '../../../parts/controls/card.tsx';
import { IntervalBars } from '../../../parts/figure/interval-bars.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { useFaultWords } from './fault-words.ts';
import styles from './result-screen.module.css';

/** What standing in the advised place is worth: the same reps from both. */
export function GainCard({ gain, movement }: { gain: PlaceGain; movement: MovementName }) {
  const words = useWords().eye;
  const formats = useFormats();
  const sentence = useFaultWords(movement);
  const share = (rate: PlaceGain['rightPoor']): string =>
    rate === null ? words.result.counts.cannotTell : formats.percent(rate.value);
  const [poor, advised] = [share(gain.rightPoor), share(gain.rightAdvised)];
  const says = {
    'advised-better': words.result.gain.better(poor, advised),
    'poor-better': words.result.gain.worse(poor, advised),
    unclear: words.result.gain.unclear(poor, advised),
    'too-few': words.result.gain.few,
  }[gain.verdict];
  const bar = (key: 'advised' | 'poor', rate: PlaceGain['rightPoor']) => ({
    key,
    name: words.places[key],
    value: rate,
    text: rate === null ? words.result.counts.cannotTell : words.result.counts.rate(rate),
  });
  return (
    <Card title={words.result.gain.title}>
      <p className={styles.answer} data-testid="gain">
        {says}
      </p>
      <IntervalBars
        label={words.result.gain.title}
        bars={[bar('advised', gain.rightAdvised), bar('poor', gain.rightPoor)]}
      />
      <ul className={styles.sentences}>
        <li>
          {words.places.advised}: {sentence(gain.advised)}
        </li>
        <li>
          {words.places.poor}: {sentence(gain.poor)}
        </li>
        {gain.gain === null ? null : (
          <li>
            {words.result.gain.difference}: {words.result.counts.rate(gain.gain)}
          </li>
        )}
        {gain.precisionRatio === null ? null : (
          <li>{words.result.gain.sharper(words.result.counts.plain(gain.precisionRatio))}</li>
        )}
      </ul>
      <p className={styles.soft}>{words.result.how.place}</p>
    </Card>
  );
}
