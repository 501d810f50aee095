import type { SetEvent } from '../../../../shared-types/log/events.ts';

type Without<E> = E extends SetEvent ? Omit<E, 'set' | 'pad' | 'seq'> : never;

/** An event before the pad's outbox names it: the set, the pad and the running number are still to come. */
export type Draft = Without<SetEvent>;
