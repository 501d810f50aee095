import type { Ledger } from '../ledger/ledger.ts';
import type { Changes } from './changes.ts';
import { PROJECTION } from './reports/set-facts.ts';
import type { ReportsThread } from './reports/thread-client.ts';

/** Pause between a set's event and the sums of its facts: a set in full swing is summed now and then, not at every call. */
const PAUSE_MS = 250;
const MOST_AT_ONCE = 100_000;

/**
 * Keeps the facts of sets (what lists and reports read) as new as their logs: a little after each append, and for all that
 * an earlier run of the program left behind. The thread computes, this side writes. Facts may always be computed again.
 */
export class FactsKeeper {
  /** Sets whose facts lag behind, with the place of their last event. */
  private readonly waiting = new Map<string, number>();
  private timer: NodeJS.Timeout | null = null;
  private running: Promise<void> = Promise.resolve();
  private closed = false;
  private readonly ledger: Ledger;
  private readonly thread: ReportsThread;
  private readonly changes: Changes;

  constructor(ledger: Ledger, thread: ReportsThread, changes: Changes) {
    this.ledger = ledger;
    this.thread = thread;
    this.changes = changes;
  }

  /** Notes that the log of a set has grown up to place `lastN`. */
  touch(set: string, lastN: number): void {
    this.waiting.set(set, lastN);
    if (this.timer !== null || this.closed) return;
    this.timer = setTimeout(() => {
      this.timer = null;
      this.running = this.running.then(() => this.sweep());
    }, PAUSE_MS);
  }

  /** Takes up what an earlier run of the program left behind, or an older computation left. */
  catchUp(): void {
    for (const { id, lastN } of this.ledger.facts.stale(PROJECTION, MOST_AT_ONCE)) this.touch(id, lastN);
  }

  /** Resolves once every set's facts are as new as its log. */
  async settle(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    this.running = this.running.then(() => this.sweep());
    await this.running;
  }

  async close(): Promise<void> {
    this.closed = true;
    if (this.timer !== null) clearTimeout(this.timer);
    await this.running;
  }

  private async sweep(): Promise<void> {
    for (const [id, lastN] of this.waiting) {
      if (this.closed) return;
      this.waiting.delete(id);
      try {
        this.ledger.facts.write(id, await this.thread.calls.facts({ id, appliedN: lastN }));
        this.changes.changed('sets', id);
      } catch (error) {
        // The set stays stale and is taken up again at its next event or the next start; the others go on.
        if (!this.closed) process.stderr.write(`The figures of set ${id} could not be computed: ${String(error)}\n`);
      }
    }
  }
}
