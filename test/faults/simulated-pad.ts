import { WebSocket } from 'ws';
import { type PadLink, padLinkOver } from '../../renderer/link/pad/pad-link.ts';
import { openStore } from '../../renderer/link/store.ts';
import { openSocket } from '../../renderer/link/transport.ts';
import { refKey, type SetEvent } from '../../shared-types/log/events.ts';
import type { Random } from '../../shared-types/motion/random.ts';
import { callDraft, goDraft } from '../link/drafts.ts';

/** Where a pad connects: through which port, and what its browser says of itself. */
export interface PadPlace {
  readonly linePort: number;
  readonly host: string;
  /** `/…/`, the path of the pads' page. */
  readonly path: string;
  readonly cookie: string;
  readonly set: string;
  readonly name: string;
}

/** A judge with a phone: calls at about `rate` a second, reloads its page now and then, and remembers what it showed. */
export interface SimulatedPad {
  /** What its screen showed as made, in order, page load by page load. */
  readonly shown: SetEvent[];
  /** Keys of what the desk has acknowledged to it. */
  readonly acknowledged: Set<string>;
  readonly reloads: () => number;
  /** Set aside by the desk's refusal or for a conflict: there must be none. */
  readonly aside: () => number;
  readonly unsent: () => number;
  /** How far the aligned clock is off, and how far it says it may be, milliseconds; null before any answer. */
  readonly clockError: () => { readonly off: number; readonly uncertaintyMs: number } | null;
  /** Makes no further calls. */
  readonly stop: () => Promise<void>;
  readonly close: () => void;
}

const timings = { waitMs: 1_000, firstPauseMs: 20, longestPauseMs: 300, pulseMs: 1_500 };
const sending = { batch: 50, firstPauseMs: 20, longestPauseMs: 300, sweepMs: 2_000 };
const exchanges = { burst: 4, burstMs: 50, steadyMs: 1_000 };

/**
 * @param rate calls a second
 * @param reloadAfterMs how long a page lives on average
 */
export function simulatePad(place: PadPlace, rate: number, reloadAfterMs: number, chance: Random): SimulatedPad {
  const shown: SetEvent[] = [];
  const acknowledged = new Set<string>();
  // The phone's own clock is wrong by seconds; nothing may depend on it.
  const wrong = chance.between(-9_000, 9_000);
  const source = { wall: () => Date.now() + wrong, now: () => performance.now() };
  let reloads = 0;
  let calling = true;
  let page = load();
  const begun = performance.now();
  let nextReload = begun + chance.between(0.5, 1.5) * reloadAfterMs;

  function load(): PadLink {
    class PageSocket extends WebSocket {
      constructor(address: URL) {
        const origin = `http://${place.host}`;
        super(address, { origin, headers: { host: place.host, cookie: place.cookie }, perMessageDeflate: false });
        this.on('error', () => {});
      }
    }
    const open = openSocket(`http://127.0.0.1:${place.linePort}${place.path}`, async () => 'away');
    const link = padLinkOver({
      open: () => {
        Object.assign(globalThis, { WebSocket: PageSocket });
        return open();
      },
      openStore: () => openStore(place.name),
      timings,
      sending,
      exchanges,
      source,
    });
    noteAcknowledged(link);
    return link;
  }

  /** What leaves the outbox without being set aside was acknowledged. */
  function noteAcknowledged(link: PadLink): void {
    link.outbox.total.subscribe(() => {
      const left = shown.slice(0, shown.length - link.outbox.total.get());
      for (const event of left) acknowledged.add(refKey(event));
    });
  }

  async function judge(): Promise<void> {
    show(page.outbox.put(goDraft(place.set)));
    while (calling) {
      await new Promise((resolve) => setTimeout(resolve, chance.between(0.5, 1.5) * (1_000 / rate)));
      if (!calling) return;
      show(page.outbox.put(callDraft(place.set, Math.round(performance.now() - begun))));
      if (performance.now() < nextReload) continue;
      nextReload = performance.now() + chance.between(0.5, 1.5) * reloadAfterMs;
      reloads += 1;
      // A tap is on the disk some milliseconds after it was shown; what a kill within them may cost is in the link's limits.
      await page.outbox.written();
      page.close();
      page = load();
    }
  }

  function show(event: SetEvent): void {
    shown.push(event);
  }

  const judged = judge();
  return {
    shown,
    acknowledged,
    reloads: () => reloads,
    aside: () => page.outbox.aside.get().length,
    unsent: () => page.outbox.total.get(),
    clockError: () => {
      const now = page.clock.deskNow();
      return now === null ? null : { off: Math.abs(now.at - Date.now()), uncertaintyMs: now.uncertaintyMs };
    },
    stop: async () => {
      calling = false;
      await judged;
      await page.outbox.written();
    },
    close: () => page.close(),
  };
}
