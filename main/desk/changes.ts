import { EventPublisher } from '@orpc/server';
import type { Change } from '../../shared-types/contract/desk.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { NightEvent } from '../../shared-types/night/events.ts';

/** Something was written to the log of a set or of a night. */
export interface Pulse {
  readonly of: 'set' | 'night';
  readonly id: string;
}

type Topics = { changes: Change; pulses: Pulse } & Record<`set:${string}`, { events: SetEvent[] }> &
  Record<`night:${string}`, { events: NightEvent[] }>;

/** What the desk tells its listeners: which list changed, and the events written to a set. */
export class Changes {
  // A slow listener of a running set must miss no event; a few thousand lie far above any set's length.
  private readonly publisher = new EventPublisher<Topics>({ maxBufferedEvents: 5_000 });

  changed(topic: Change['topic'], id: string | null): void {
    this.publisher.publish('changes', { topic, id });
  }

  appended(set: string, events: SetEvent[]): void {
    this.publisher.publish(`set:${set}`, { events });
    this.publisher.publish('pulses', { of: 'set', id: set });
  }

  nightAppended(night: string, events: NightEvent[]): void {
    this.publisher.publish(`night:${night}`, { events });
    this.publisher.publish('pulses', { of: 'night', id: night });
    this.changed('nights', night);
  }

  watchNight(night: string, signal: AbortSignal | undefined): AsyncGenerator<{ events: NightEvent[] }> {
    return this.publisher.subscribe(`night:${night}`, { signal });
  }

  /** Every writing to any log, without its contents: for who follows many sets at once. */
  pulses(signal: AbortSignal | undefined): AsyncGenerator<Pulse> {
    return this.publisher.subscribe('pulses', { signal });
  }

  listen(signal: AbortSignal | undefined): AsyncGenerator<Change> {
    return this.publisher.subscribe('changes', { signal });
  }

  watch(set: string, signal: AbortSignal | undefined): AsyncGenerator<{ events: SetEvent[] }> {
    return this.publisher.subscribe(`set:${set}`, { signal });
  }
}
