import { refKey, type SetEvent } from '../../../../shared-types/log/events.ts';
import { orderEvents } from '../../../../shared-types/log/order.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import { withdrawnKeys } from '../live/withdrawn.ts';

/** One line of the log as it is told: the event, what it speaks of, and whether it still has effect. */
export interface HistoryLine {
  readonly key: string;
  readonly event: SetEvent;
  /** The event that this one speaks of; for the withdrawal of a slip, what that slip had withdrawn. */
  readonly target: SetEvent | null;
  /** Number of the attempt that the event is or speaks of; null where that is none that stands. */
  readonly attempt: number | null;
  readonly withdrawn: boolean;
  /** A slip of a slip: it brings back instead of taking away. */
  readonly restores: boolean;
  /** Why it has no effect, in the fold's words; null where it has. */
  readonly clash: string | null;
}

/** The whole log in the order in which it is read. */
export function historyLines(log: readonly SetEvent[], state: SetState): readonly HistoryLine[] {
  const { events, byKey } = orderEvents(log);
  const withdrawn = withdrawnKeys(log);
  const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
  const numbers = new Map(standing.map((attempt, index) => [refKey(attempt.ref), index + 1]));
  const clashes = new Map(state.clashes.map((clash) => [refKey(clash.event), clash.message]));
  return events.map((event) => {
    const key = refKey(event);
    const direct = 'of' in event ? (byKey.get(refKey(event.of)) ?? null) : null;
    const restores = event.kind === 'slip' && direct?.kind === 'slip';
    const target = restores && direct.kind === 'slip' ? (byKey.get(refKey(direct.of)) ?? direct) : direct;
    const about = event.kind === 'call' ? event : target;
    return {
      key,
      event,
      target,
      attempt: about === null ? null : (numbers.get(refKey(about)) ?? null),
      withdrawn: withdrawn.has(key),
      restores,
      clash: clashes.get(key) ?? null,
    };
  });
}
