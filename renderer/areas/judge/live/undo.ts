import { refKey, type SetEvent } from '../../../../shared-types/log/events.ts';
import { withdrawnKeys } from './withdrawn.ts';

/**
 * The pad's own events that one press of "slip" withdraws, latest first: the last one that stands and is neither a go nor
 * a slip. A finish that came of itself goes with the call or the mark that reached the goal. Empty where nothing is left.
 */
export function slipTargets(log: readonly SetEvent[], pad: string): readonly SetEvent[] {
  const withdrawn = withdrawnKeys(log);
  const own = log
    .filter((event) => event.pad === pad && event.kind !== 'go' && event.kind !== 'slip')
    .filter((event) => !withdrawn.has(refKey(event)))
    .sort((one, other) => other.seq - one.seq);
  const [last, before] = own;
  if (last === undefined) return [];
  if (last.kind !== 'finish' || before === undefined) return [last];
  const reached = (before.kind === 'call' || before.kind === 'mark') && before.seq === last.seq - 1;
  return reached && before.at === last.at ? [last, before] : [last];
}

/** The pad's latest slip where nothing came after it: what "put back" withdraws in turn. */
export function lastSlip(log: readonly SetEvent[], pad: string): (SetEvent & { kind: 'slip' }) | null {
  const last = log
    .filter((event) => event.pad === pad)
    .reduce<SetEvent | null>((latest, event) => (latest === null || event.seq > latest.seq ? event : latest), null);
  if (last?.kind !== 'slip' || withdrawnKeys(log).has(refKey(last))) return null;
  const target = log.find((event) => refKey(event) === refKey(last.of));
  return target === undefined || target.kind === 'slip' ? null : last;
}
