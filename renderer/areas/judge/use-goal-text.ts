import type { Goal } from '../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../parts/words/words.tsx';

/** Says a goal in a few words: "100 throws", "80 m", "5:00". */
export function useGoalText(): (goal: Goal, sheet: Pick<StandardSheet, 'repsName'>) => string {
  const words = useWords().judge.goal;
  return (goal, sheet) => {
    switch (goal.kind) {
      case 'reps':
        return words.reps(goal.reps, sheet.repsName);
      case 'metres':
        return words.metres(goal.metres);
      case 'clock':
        return words.clock(goal.milliseconds);
      case 'open':
        return words.open;
    }
  };
}
