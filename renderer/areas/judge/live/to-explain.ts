import type { Attempt, SetState } from '../../../../shared-types/log/state.ts';

/**
 * The call whose fault may be named now: the last no-rep without one, or a caution without one while it is the last call.
 * Naming it is never a must, and new calls go on meanwhile.
 */
export function toExplain(state: Pick<SetState, 'attempts'>): Attempt | null {
  const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
  const last = standing.at(-1);
  if (last?.verdict === 'caution' && last.faults.length === 0) return last;
  return standing.findLast((attempt) => attempt.verdict === 'no-rep' && attempt.faults.length === 0) ?? null;
}

/** 1, 2, … over the attempts that stand; null where the attempt does not. */
export function attemptNumber(state: Pick<SetState, 'attempts'>, attempt: Attempt): number | null {
  const index = state.attempts.filter((item) => !item.withdrawn).indexOf(attempt);
  return index < 0 ? null : index + 1;
}
