import { refKey, type SetEvent } from '../../../../shared-types/log/events.ts';
import { orderEvents } from '../../../../shared-types/log/order.ts';
import { withdrawnKeys } from './withdrawn.ts';

/** The names under which this screen has written: each load of the page has its own. */
export type OwnPads = ReadonlySet<string>;

/**
 * This screen's own events that one press of "slip" withdraws, latest first: the last one that stands and is neither a go
 * nor a slip. A finish that came of itself goes with the call or the mark that reached the goal. Empty where none is left.
 */
export function slipTargets(log: readonly SetEvent[], own: OwnPads): readonly SetEvent[] {
  const withdrawn = withdrawnKeys(log);
  const standing = orderEvents(log)
    .events.filter((event) => own.has(event.pad) && event.kind !== 'go' && event.kind !== 'slip')
    .filter((event) => !withdrawn.has(refKey(event)));
  const last = standing.at(-1);
  const before = standing.at(-2);
  if (last === undefined) return [];
  if (last.kind !== 'finish' || before === undefined) return [last];
  const reached = (before.kind === 'call' || before.kind === 'mark') && before.pad === last.pad;
  return reached && before.seq === last.seq - 1 && before.at === last.at ? [last, before] : [last];
}

/** This screen's latest slip where nothing of its own came after it: what "put back" withdraws in turn. */
export function lastSlip(log: readonly SetEvent[], own: OwnPads): (SetEvent & { kind: 'slip' }) | null {
  const { events, byKey } = orderEvents(log);
  const last = events.findLast((event) => own.has(event.pad));
  if (last?.kind !== 'slip') return null;
  const target = byKey.get(refKey(last.of));
  return target === undefined || target.kind === 'slip' ? null : last;
}
