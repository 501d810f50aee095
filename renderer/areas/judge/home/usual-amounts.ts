import type { Goal, GoalKind } from '../../../../shared-types/log/setup.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { goalOf } from './choice.ts';

/** Goals of a kind that stand one press away, smallest first: the sheet's usual one, and what a gym takes beside it. */
export function usualGoals(kind: GoalKind, sheet: Pick<StandardSheet, 'usualGoal'>): readonly Goal[] {
  const usual = goalOf(kind, sheet);
  switch (usual.kind) {
    case 'reps':
      return amounts(usual.reps).map((reps) => ({ kind: 'reps', reps }));
    case 'metres':
      return amounts(usual.metres).map((metres) => ({ kind: 'metres', metres }));
    case 'clock':
      return [60_000, 180_000, 300_000, 600_000].map((milliseconds) => ({ kind: 'clock', milliseconds }));
    case 'open':
      return [usual];
  }
}

function amounts(usual: number): readonly number[] {
  const parts = [usual / 4, usual / 2, usual].map((part) => Math.max(1, Math.round(part)));
  return [...new Set(parts)];
}

/** The figure of a goal in its own unit; 0 for an open one. */
export function amountOf(goal: Goal): number {
  switch (goal.kind) {
    case 'reps':
      return goal.reps;
    case 'metres':
      return goal.metres;
    case 'clock':
      return goal.milliseconds;
    case 'open':
      return 0;
  }
}
