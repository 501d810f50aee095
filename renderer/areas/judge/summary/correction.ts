import { type EventRef, refKey, type SetEvent, type Verdict } from '../../../../shared-types/log/events.ts';
import type { Attempt } from '../../../../shared-types/log/state.ts';
import type { Draft } from '../live/draft.ts';
import { withdrawnKeys } from '../live/withdrawn.ts';

/** What a call is to stand as: a verdict, or no attempt at all because it was pressed by mistake. */
export type Standing = Verdict | 'withdrawn';

export interface Correction {
  readonly standing: Standing;
  readonly faults: readonly string[];
  /** Who decided it; null for the set's judge. */
  readonly by: string | null;
  readonly reason: string;
}

export function standingOf(attempt: Attempt): Standing {
  return attempt.withdrawn ? 'withdrawn' : attempt.verdict;
}

function sameFaults(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((code) => other.includes(code));
}

/**
 * The further events that make a call stand as corrected; none where it stands so already. A slip withdraws it or brings
 * it back; faults alone are an explanation; another verdict, or a word of why or who, is a reversal.
 */
export function correctionDrafts(
  attempt: Attempt,
  correction: Correction,
  log: readonly SetEvent[],
  at: number,
): readonly Draft[] {
  const { standing, by, reason } = correction;
  if (standing === 'withdrawn') return attempt.withdrawn ? [] : [{ kind: 'slip', at, of: attempt.ref }];
  const faults = standing === 'counted' ? [] : [...correction.faults];
  const drafts: Draft[] = [];
  if (attempt.withdrawn) {
    const slip = standingSlipOf(attempt.ref, log);
    if (slip === null) return [];
    drafts.push({ kind: 'slip', at, of: { pad: slip.pad, seq: slip.seq } });
  }
  const sameVerdict = attempt.verdict === standing;
  if (sameVerdict && sameFaults(attempt.faults, faults)) return drafts;
  if (sameVerdict && by === null && reason === '') {
    drafts.push({ kind: 'explain', at, of: attempt.ref, faults });
  } else {
    drafts.push({ kind: 'reverse', at, of: attempt.ref, verdict: standing, faults, by, reason });
  }
  return drafts;
}

/** The slip that withdraws an event now; null where none does. */
function standingSlipOf(target: EventRef, log: readonly SetEvent[]): SetEvent | null {
  const withdrawn = withdrawnKeys(log);
  const key = refKey(target);
  return (
    log.findLast((event) => event.kind === 'slip' && refKey(event.of) === key && !withdrawn.has(refKey(event))) ?? null
  );
}
