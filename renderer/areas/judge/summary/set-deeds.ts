import type { SetEvent } from '../../../../shared-types/log/events.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import type { SetStart } from '../../../link/store.ts';
import type { Draft } from '../live/draft.ts';

/** What the parts of a finished set's screen share: the set, its log, and the way to write a further event. */
export interface SetDeeds {
  readonly start: SetStart;
  readonly state: SetState;
  readonly log: readonly SetEvent[];
  /** Milliseconds since go, now. */
  readonly now: () => number;
  readonly write: (drafts: readonly Draft[]) => void;
  /** The name of a person, empty for nobody. */
  readonly nameOf: (id: string | null) => string;
}
