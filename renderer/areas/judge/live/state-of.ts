import type { SetEvent } from '../../../../shared-types/log/events.ts';
import { foldSet } from '../../../../shared-types/log/fold.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';

const folded = new WeakMap<readonly SetEvent[], SetState>();

/** The state of a log, folded once for each array of events: the press and the paint after it share it. */
export function stateOf(setId: string, events: readonly SetEvent[]): SetState {
  const known = folded.get(events);
  if (known !== undefined) return known;
  const state = foldSet(setId, events);
  folded.set(events, state);
  return state;
}
