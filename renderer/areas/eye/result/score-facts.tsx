import type { Detection } from '../../../../shared-types/contract/drills/scores.ts';
import type { DrillReport } from '../../../../shared-types/contract/drills.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import styles from './score-facts.module.css';

interface ScoreFactsProps {
  readonly detection: Detection;
  readonly reasons: DrillReport['reasons'];
  readonly reaction: DrillReport['reaction']['all'];
  readonly counts: DrillReport['counts'] | null;
}

/** Hits, false alarms, sensitivity, criterion, reasons, reaction, each with its interval. */
export function ScoreFacts({ detection, reasons, reaction, counts }: ScoreFactsProps) {
  const words = useWords().eye.result.counts;
  const { number } = useFormats();
  const { hits, misses, falseAlarms, correctRejections } = detection;
  const time = (ms: number): string => (ms < 0 ? words.early(ms) : words.after(ms));
  const fact = (id: string, name: string, value: string, more: string | null = null) => (
    <div className={styles.fact} data-testid={`score-${id}`}>
      <dt>{name}</dt>
      <dd>
        <span className={styles.value}>{value}</span>
        {more === null ? null : <span className={styles.more}>{more}</span>}
      </dd>
    </div>
  );
  const count = (id: string, name: string, value: number) => (value === 0 ? null : fact(id, name, number(value)));
  return (
    <dl className={styles.facts}>
      {fact('hits', words.hits, words.hitsOf(hits, hits + misses), detection.hitRate && words.rate(detection.hitRate))}
      {fact(
        'false-alarms',
        words.falseAlarms,
        words.hitsOf(falseAlarms, falseAlarms + correctRejections),
        detection.falseAlarmRate && words.rate(detection.falseAlarmRate),
      )}
      {fact('d-prime', words.dPrime, detection.dPrime === null ? words.cannotTell : words.plain(detection.dPrime))}
      {fact(
        'criterion',
        words.criterion,
        detection.criterion === null ? words.cannotTell : words.plain(detection.criterion),
      )}
      {fact(
        'reasons',
        words.reasons,
        words.hitsOf(reasons.right, reasons.of),
        reasons.rate && words.rate(reasons.rate),
      )}
      {fact(
        'reaction',
        words.reaction,
        reaction.medianMs === null ? words.cannotTell : time(reaction.medianMs),
        reaction.lowMs === null || reaction.highMs === null
          ? null
          : words.reactionSpan(time(reaction.lowMs), time(reaction.highMs)),
      )}
      {counts === null ? null : (
        <>
          {count('unanswered', words.unanswered, counts.unanswered)}
          {count('extra', words.extra, counts.extraCalls)}
          {count('spoilt', words.spoilt, counts.spoilt)}
        </>
      )}
    </dl>
  );
}
