import { useState } from 'react';
import type { PlanAnswer } from '../../../../shared-types/contract/nights.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { FailureNote } from '../../../parts/controls/loaded.tsx';
import { useAction } from '../../../parts/desk/use-action.ts';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import type { Shown } from './night-screen.tsx';
import styles from './plan.module.css';

/** Lets the desk make the plan of all that has not begun; where there is none, says why. */
export function PlanMaker({ shown }: { shown: Shown }) {
  const words = useWords().night.plan;
  const { tell } = useNotices();
  const { record, plan, write } = shown;
  const { id } = record.night;
  const make = useAction((client, night: string) => client.nights.plan({ id: night }));
  const [refused, setRefused] = useState<PlanAnswer | null>(null);
  const why = plan.length === 0 ? 'made' : 'again';
  const run = async (): Promise<void> => {
    setRefused(null);
    const answer = await make.run(id);
    if (answer === undefined) return;
    if (answer.outcome !== 'planned' || answer.heats === null) return setRefused(answer);
    if (!(await write({ kind: 'plan', why, heats: answer.heats }))) return;
    tell(
      words.made,
      plan.length === 0 ? {} : { undo: () => void write({ kind: 'plan', why: 'by-hand', heats: plan }) },
    );
  };
  const takeNearest = async (heats: PlanAnswer['heats']): Promise<void> => {
    if (heats === null || !(await write({ kind: 'plan', why, heats }))) return;
    setRefused(null);
    tell(words.nearestTaken);
  };
  return (
    <div className={styles.maker}>
      <div className="no-print">
        <Button weight={plan.length === 0 ? 'main' : 'plain'} busy={make.busy} onClick={() => void run()}>
          {plan.length === 0 ? words.make : words.again}
        </Button>
      </div>
      <p role="status" className="visually-hidden">
        {make.busy ? words.making : ''}
      </p>
      {make.failure === undefined ? null : <FailureNote failure={make.failure} onAgain={() => void run()} />}
      {refused === null ? null : (
        <div className={styles.broken} role="alert" data-testid="refused">
          <p>
            <strong>{refused.outcome === 'impossible' ? words.impossible : words.notFound}</strong>
          </p>
          <ul>
            {[...new Set(refused.reasons)].map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
          <div className={styles.buttons}>
            {refused.heats === null ? null : (
              <Button onClick={() => void takeNearest(refused.heats)}>{words.useNearest}</Button>
            )}
            <Button weight="quiet" onClick={() => setRefused(null)}>
              {words.dropAnswer}
            </Button>
          </div>
        </div>
      )}
    </div>
  );
}
