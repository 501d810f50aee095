import type { ReactNode } from 'react';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../parts/words/words.tsx';
import styles from './sheet-screen.module.css';

/** Goals, no-reps, loads, heights: the sheet in figures. */
export function SheetFacts({ sheet }: { sheet: StandardSheet }) {
  const words = useWords().standards;
  const facts: readonly (readonly [string, ReactNode] | null)[] = [
    [words.noRep, words.consequence(sheet.consequence)],
    [words.usual, words.usualGoal(sheet.usualGoal)],
    [words.goals, words.goalList(sheet.goals)],
    sheet.loadsKg.length === 0 ? null : [words.loads, words.loadList(sheet.loadsKg)],
    sheet.heightsM.length === 0 ? null : [words.heights(sheet.heightName), words.heightList(sheet.heightsM)],
    sheet.markEveryM === null ? null : [words.marks, words.markEvery(sheet.markEveryM)],
  ];
  return (
    <dl className={styles.facts}>
      {facts
        .filter((fact) => fact !== null)
        .map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  );
}
