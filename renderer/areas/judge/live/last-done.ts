import { refKey, type SetEvent } from '../../../../shared-types/log/events.ts';
import { tally } from '../../../../shared-types/log/fold.ts';
import { orderEvents } from '../../../../shared-types/log/order.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import { attemptNumber } from './to-explain.ts';

/** The log's latest line as the screen tells it. Cycles in seconds; attempts numbered over those that stand. */
export type LastDone =
  | {
      readonly kind: 'counted' | 'caution';
      readonly count: number;
      readonly cycleS: number | null;
      readonly fault: string | null;
    }
  | { readonly kind: 'no-rep'; readonly fault: string | null }
  | { readonly kind: 'explained'; readonly attempt: number | null; readonly fault: string | null }
  | { readonly kind: 'reversed'; readonly attempt: number | null }
  | { readonly kind: 'mark'; readonly metres: number }
  | { readonly kind: 'withdrawn' | 'put-back'; readonly what: SetEvent }
  | { readonly kind: 'go' | 'break-start' | 'break-end' | 'finish' | 'abandon' | 'other' };

/** Null in an empty log. What is told stands in the log: it is the same after a reload. */
export function lastDone(log: readonly SetEvent[], state: SetState): LastDone | null {
  const { events, byKey } = orderEvents(log);
  const last = events.at(-1);
  if (last === undefined) return null;
  switch (last.kind) {
    case 'slip':
      return slipDone(last, byKey);
    case 'call':
      return callDone(last, state);
    case 'explain':
    case 'reverse': {
      const attempt = state.attempts.find((item) => refKey(item.ref) === refKey(last.of));
      const number = attempt === undefined ? null : attemptNumber(state, attempt);
      if (last.kind === 'reverse') return { kind: 'reversed', attempt: number };
      return { kind: 'explained', attempt: number, fault: last.faults[0] ?? null };
    }
    case 'mark':
      return { kind: 'mark', metres: last.metres };
    case 'sign-off':
    case 'appeal':
      return { kind: 'other' };
    default:
      return { kind: last.kind };
  }
}

function slipDone(slip: SetEvent & { kind: 'slip' }, byKey: ReadonlyMap<string, SetEvent>): LastDone {
  const target = byKey.get(refKey(slip.of));
  if (target === undefined) return { kind: 'other' };
  if (target.kind !== 'slip') return { kind: 'withdrawn', what: target };
  return { kind: 'put-back', what: byKey.get(refKey(target.of)) ?? target };
}

function callDone(call: SetEvent & { kind: 'call' }, state: SetState): LastDone {
  const fault = call.faults[0] ?? null;
  if (call.verdict === 'no-rep') return { kind: 'no-rep', fault };
  const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
  const before = standing.findLast((attempt) => attempt.at < call.at);
  const cycleS = before === undefined ? null : (call.at - before.at) / 1000;
  return { kind: call.verdict, count: tally(state).counted, cycleS, fault };
}
