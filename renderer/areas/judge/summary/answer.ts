import type { SetReport } from '../../../../shared-types/contract/reports.ts';

/** What the one sentence at the top can say. */
export type Answer =
  | { readonly kind: 'no-attempt' }
  | { readonly kind: 'clean' }
  | { readonly kind: 'explain-first' }
  | { readonly kind: 'train'; readonly train: NonNullable<SetReport['train']>; readonly few: boolean };

/** So many no-reps of one set are too few to say which fault costs most. */
const fewNoReps = 3;

/** What to train first and why, as far as the set can tell. */
export function answerOf(report: Pick<SetReport, 'counts' | 'train'>): Answer {
  const { counts, train } = report;
  if (counts.attempts === 0) return { kind: 'no-attempt' };
  if (counts.noReps === 0) return { kind: 'clean' };
  if (train === null) return { kind: 'explain-first' };
  return { kind: 'train', train, few: counts.noReps < fewNoReps };
}
