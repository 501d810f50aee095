import type { Goal } from '../../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../../parts/words/words.tsx';

export type EndingKind = Exclude<Goal['kind'], 'open'>;

/** Usual goals to begin with: common practice, no source. */
const usual: Record<EndingKind, Goal> = {
  reps: { kind: 'reps', reps: 100 },
  metres: { kind: 'metres', metres: 80 },
  clock: { kind: 'clock', milliseconds: 300_000 },
};

/** The goals with an end that a sheet allows; all of them until the sheet is known. */
export function endingKinds(sheet: StandardSheet | undefined): readonly EndingKind[] {
  const all: readonly EndingKind[] = ['reps', 'metres', 'clock'];
  const allowed = sheet === undefined ? all : all.filter((kind) => sheet.goals.includes(kind));
  return allowed.length === 0 ? ['reps'] : allowed;
}

export function usualGoal(kind: EndingKind): Goal {
  return usual[kind];
}

/** How much of its kind a goal asks for: reps, metres or seconds. */
export function amountOf(goal: Goal): number | null {
  switch (goal.kind) {
    case 'reps':
      return goal.reps;
    case 'metres':
      return goal.metres;
    case 'clock':
      return goal.milliseconds / 1_000;
    case 'open':
      return null;
  }
}

/** A goal as a short phrase, with the sheet's own word for its reps. */
export function useGoalPhrase(): (goal: Goal, repsName: string) => string {
  const words = useWords().review.plans.forecast.goalText;
  return (goal, repsName) => {
    switch (goal.kind) {
      case 'reps':
        return words.reps(goal.reps, repsName);
      case 'metres':
        return words.metres(goal.metres);
      case 'clock':
        return words.clock(goal.milliseconds);
      case 'open':
        return '';
    }
  };
}
