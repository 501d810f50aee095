import { useId, useRef, useState } from 'react';
import { Button } from '../../../parts/controls/button.tsx';
import { Dialog } from '../../../parts/controls/dialog.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import type { Intent } from './decide.ts';
import styles from './mark-row.module.css';
import { PressButton } from './press-button.tsx';
import type { Hit } from './use-live-set.ts';

interface MarkRowProps {
  readonly next: number;
  readonly reached: number;
  readonly hit: Hit;
  readonly onPress: (intent: Intent, timeStamp: number) => void;
}

/** Metres reached on the lane: the next mark in one press, any other one by its figure. */
export function MarkRow({ next, reached, hit, onPress }: MarkRowProps) {
  const words = useWords().judge.live;
  const common = useWords().common;
  const titleId = useId();
  const [asking, setAsking] = useState(false);
  const [metres, setMetres] = useState<number | null>(null);
  // The mark carries the moment at which the judge reached for it, not that of the last digit typed.
  const seenAt = useRef(0);
  const good = metres !== null && metres >= reached && metres <= 100_000;
  return (
    <div className={styles.row}>
      <PressButton
        className={styles.mark}
        turn={hit.place === 'mark' ? hit.turn : 0}
        onPress={(timeStamp) => onPress({ kind: 'mark', metres: next }, timeStamp)}
      >
        {words.mark(next)}
      </PressButton>
      <PressButton
        className={styles.other}
        onPress={(timeStamp) => {
          seenAt.current = timeStamp;
          setMetres(null);
          setAsking(true);
        }}
      >
        {words.otherMark}
      </PressButton>
      <Dialog open={asking} onClose={() => setAsking(false)} labelledBy={titleId}>
        <form
          className={styles.form}
          onSubmit={(event) => {
            event.preventDefault();
            if (!good) return;
            setAsking(false);
            onPress({ kind: 'mark', metres }, seenAt.current);
          }}
        >
          <h2 id={titleId}>{words.otherMark}</h2>
          <NumberField
            label={words.markField}
            unit="m"
            value={metres}
            onChange={setMetres}
            error={metres !== null && metres < reached ? words.nothing['mark-goes-back'] : undefined}
          />
          <div className={styles.actions}>
            <Button onClick={() => setAsking(false)}>{common.cancel}</Button>
            <Button type="submit" weight="main" aria-disabled={!good}>
              {words.setMark}
            </Button>
          </div>
        </form>
      </Dialog>
    </div>
  );
}
