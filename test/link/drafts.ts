import type { EventDraft } from '../../renderer/link/outbox.ts';

type DraftOf<K extends EventDraft['kind']> = Extract<EventDraft, { kind: K }>;

export function goDraft(set: string): DraftOf<'go'> {
  return { set, at: 0, kind: 'go', wallClock: 1_700_000_000_000 };
}

export function callDraft(set: string, at: number): DraftOf<'call'> {
  return { set, at, kind: 'call', verdict: 'counted', faults: [] };
}

/** Waits until something holds; fails after ten seconds. */
export async function until(holds: () => boolean, milliseconds = 10_000): Promise<void> {
  const end = performance.now() + milliseconds;
  while (!holds()) {
    if (performance.now() > end)
      throw new Error(`it did not come to hold within ${milliseconds} ms: ${holds.toString()}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
