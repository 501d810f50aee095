import { type ReactNode, useState } from 'react';
import { Button } from '../../../parts/controls/button.tsx';
import { Card } from '../../../parts/controls/card.tsx';
import { newId } from '../../../parts/desk/new-id.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { FaultLetter } from '../fault-letter.tsx';
import { FaultFields } from './fault-fields.tsx';
import { emptyFault, type FaultEntry, type SheetEntry } from './sheet-entry.ts';
import styles from './sheet-form.module.css';
import type { FormFields } from './sheet-form.tsx';

const most = 12;

/** The faults of the sheet that is written, each folded away until it is wanted or something in it is wrong. */
export function FaultList({ entry, change, problem }: FormFields<SheetEntry>) {
  const words = useWords().standards.form;
  const { faults } = entry;
  const listProblem = problem('faults');
  const replace = (place: number, next: readonly FaultEntry[]): void =>
    change({ faults: [...faults.slice(0, place), ...next, ...faults.slice(place + 1)] });
  const moveUp = (place: number): void => {
    const [above, own] = [faults[place - 1], faults[place]];
    if (above === undefined || own === undefined) return;
    change({ faults: [...faults.slice(0, place - 1), own, above, ...faults.slice(place + 1)] });
  };
  return (
    <Card title={words.faults}>
      <p className={styles.hint}>{words.faultsHint}</p>
      <div>
        {faults.map((fault, place) => {
          const own = (field: string): string | undefined => problem(`faults.${place}.${field}`);
          return (
            <Foldable key={fault.key} fault={fault} wrong={faultFieldNames.some((field) => own(field) !== undefined)}>
              <FaultFields entry={fault} change={(part) => replace(place, [{ ...fault, ...part }])} problem={own} />
              <div className={styles.actions}>
                {place === 0 ? null : (
                  <Button weight="quiet" onClick={() => moveUp(place)}>
                    {words.moveUp(fault.name)}
                  </Button>
                )}
                <Button weight="quiet" onClick={() => replace(place, [])}>
                  {words.removeFault(fault.name)}
                </Button>
              </div>
            </Foldable>
          );
        })}
      </div>
      {listProblem === undefined ? null : <p className={styles.problem}>{listProblem}</p>}
      {faults.length >= most ? null : (
        <div>
          <Button onClick={() => change({ faults: [...faults, { ...emptyFault, key: newId() }] })}>
            {words.addFault}
          </Button>
        </div>
      )}
    </Card>
  );
}

interface FoldableProps {
  readonly fault: FaultEntry;
  readonly wrong: boolean;
  readonly children: ReactNode;
}

/** Opens by itself for a new fault and for one in which something is wrong; it never closes by itself. */
function Foldable({ fault, wrong, children }: FoldableProps) {
  const words = useWords().standards.form;
  const [open, setOpen] = useState(fault.name === '');
  if (wrong && !open) setOpen(true);
  return (
    <details className={styles.fault} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <FaultLetter initial={fault.initial.slice(0, 1)} />
        <bdi>{fault.name === '' ? words.newFault : fault.name}</bdi>
      </summary>
      {children}
    </details>
  );
}

const faultFieldNames = [
  'code',
  'name',
  'initial',
  'standard',
  'stand',
  'look',
  'cue',
  'remedy',
  'margin.quantity',
  'margin.direction',
  'margin.tolerance',
] as const;
