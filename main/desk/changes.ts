import { EventPublisher } from '@orpc/server';
import type { Change } from '../../shared-types/contract/desk.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';

type Topics = { changes: Change } & Record<`set:${string}`, { events: SetEvent[] }>;

/** What the desk tells its listeners: which list changed, and the events written to a set. */
export class Changes {
  // A slow listener of a running set must miss no event; a few thousand lie far above any set's length.
  private readonly publisher = new EventPublisher<Topics>({ maxBufferedEvents: 5_000 });

  changed(topic: Change['topic'], id: string | null): void {
    this.publisher.publish('changes', { topic, id });
  }

  appended(set: string, events: SetEvent[]): void {
    this.publisher.publish(`set:${set}`, { events });
  }

  listen(signal: AbortSignal | undefined): AsyncGenerator<Change> {
    return this.publisher.subscribe('changes', { signal });
  }

  watch(set: string, signal: AbortSignal | undefined): AsyncGenerator<{ events: SetEvent[] }> {
    return this.publisher.subscribe(`set:${set}`, { signal });
  }
}
