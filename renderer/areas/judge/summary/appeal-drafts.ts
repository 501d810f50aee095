import type { EventRef, Verdict } from '../../../../shared-types/log/events.ts';
import type { Draft } from '../live/draft.ts';

/** The head judge's answer to an appeal. */
export interface AppealAnswer {
  readonly outcome: 'upheld' | 'refused';
  /** What the call becomes where the appeal is upheld. */
  readonly verdict: Verdict;
  readonly faults: readonly string[];
  readonly by: string;
  readonly reason: string;
}

/** An appeal that is upheld changes the call by a reversal and says so; one that is refused only says so. */
export function appealDrafts(of: EventRef, answer: AppealAnswer, at: number): readonly Draft[] {
  const { outcome, verdict, by, reason } = answer;
  const told: Draft = { kind: 'appeal', at, of, reason, by, outcome };
  if (outcome === 'refused') return [told];
  const faults = verdict === 'counted' ? [] : [...answer.faults];
  return [{ kind: 'reverse', at, of, verdict, faults, by, reason }, told];
}
