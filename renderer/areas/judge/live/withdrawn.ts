import { refKey, type SetEvent } from '../../../../shared-types/log/events.ts';
import { orderEvents } from '../../../../shared-types/log/order.ts';

/** Keys of the events that stand withdrawn at the end of a log: from the last slip back, one that is withdrawn itself does nothing. */
export function withdrawnKeys(log: readonly SetEvent[]): ReadonlySet<string> {
  const { events, byKey } = orderEvents(log);
  const withdrawn = new Set<string>();
  for (const event of events.toReversed()) {
    if (event.kind !== 'slip' || withdrawn.has(refKey(event))) continue;
    if (byKey.get(refKey(event.of))?.kind !== 'go') withdrawn.add(refKey(event.of));
  }
  return withdrawn;
}
