import type { Goal } from '../../../../shared-types/log/setup.ts';

/** A goal with an end, as an address writes it: `100-reps`, `80-metres`, `300-seconds`. */
export function writeGoal(goal: Goal): string {
  switch (goal.kind) {
    case 'reps':
      return `${goal.reps}-reps`;
    case 'metres':
      return `${goal.metres}-metres`;
    case 'clock':
      return `${goal.milliseconds / 1_000}-seconds`;
    case 'open':
      return '';
  }
}

/** Reads a goal; null where the text is none, or beyond what a set may aim at. */
export function readGoal(text: string | null): Goal | null {
  const parts = /^(\d+(?:\.\d+)?)-(reps|metres|seconds)$/.exec(text ?? '');
  if (parts === null) return null;
  return goalOf(parts[2] === 'seconds' ? 'clock' : parts[2] === 'metres' ? 'metres' : 'reps', Number(parts[1]));
}

/** A goal of so many reps, metres or seconds; null beyond what a set may aim at. */
export function goalOf(kind: Exclude<Goal['kind'], 'open'>, amount: number): Goal | null {
  if (!Number.isFinite(amount)) return null;
  switch (kind) {
    case 'reps':
      return Number.isInteger(amount) && amount >= 1 && amount <= 10_000 ? { kind, reps: amount } : null;
    case 'metres':
      return amount >= 1 && amount <= 100_000 ? { kind, metres: amount } : null;
    case 'clock':
      return amount >= 1 && amount <= 86_400 ? { kind, milliseconds: Math.round(amount * 1_000) } : null;
  }
}
