import type { EventRef, SetEvent, Verdict } from '../../../shared-types/log/events.ts';

type Body<E> = E extends SetEvent ? Omit<E, 'set' | 'pad' | 'seq' | 'at'> : never;

/** Writes the log of one set on one pad; times in seconds, kept in order as a pad's monotonic clock keeps them. */
export class SetLog {
  readonly events: SetEvent[] = [];
  private readonly set: string;
  private readonly pad: string;
  private last = 0;

  constructor(set: string, pad: string, wallClock: number) {
    this.set = set;
    this.pad = pad;
    this.write(0, { kind: 'go', wallClock });
  }

  write(seconds: number, body: Body<SetEvent>): EventRef {
    this.last = Math.max(this.last, Math.round(seconds * 1000));
    const ref = { pad: this.pad, seq: this.events.length + 1 };
    this.events.push({ set: this.set, ...ref, at: this.last, ...body });
    return ref;
  }

  call(seconds: number, verdict: Verdict, fault: string | null): EventRef {
    return this.write(seconds, { kind: 'call', verdict, faults: fault === null ? [] : [fault] });
  }
}
