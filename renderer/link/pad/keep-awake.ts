import { type Observable, settable } from '../observable.ts';

/**
 * Keeps the screen lit while a set is judged. The wake lock needs a secure origin, which a pad on plain HTTP has not:
 * there a small playing picture is tried, which keeps many phones awake but promises nothing.
 * `held`: by the wake lock. `likely`: a picture plays. `not-held`: neither could be had; the phone's own screen time
 * must be set longer, and the screen says so.
 */
export type Awake = 'off' | 'held' | 'likely' | 'not-held';

export interface KeepAwake {
  readonly state: Observable<Awake>;
  /** Call it from a tap: browsers let nothing play otherwise. */
  readonly begin: () => Promise<void>;
  readonly end: () => void;
}

/** What of the page is used: `document` and `navigator`. */
export interface AwakePage {
  readonly document: Pick<
    Document,
    'createElement' | 'body' | 'visibilityState' | 'addEventListener' | 'removeEventListener'
  >;
  readonly wakeLock: Pick<WakeLock, 'request'> | undefined;
}

/** How often the picture is drawn anew, milliseconds: a stream without frames does not play. */
const frameMs = 1_000;

export function keepAwake(
  page: AwakePage = { document, wakeLock: 'wakeLock' in navigator ? navigator.wakeLock : undefined },
): KeepAwake {
  const state = settable<Awake>('off');
  let release: () => void = () => {};
  let wanted = false;

  /** A wake lock and a playing picture both end when the page is hidden: they are taken again when it is back. */
  function onVisible(): void {
    if (wanted && page.document.visibilityState === 'visible') void take();
  }

  async function take(): Promise<void> {
    release();
    release = () => {};
    const taken = (await byLock()) ?? (await byPicture());
    // It may have been ended while the browser thought about it.
    if (!wanted) return taken?.release();
    release = taken?.release ?? release;
    state.set(taken?.state ?? 'not-held');
  }

  async function byLock(): Promise<{ state: Awake; release: () => void } | null> {
    const lock = await page.wakeLock?.request('screen').catch(() => null);
    if (lock === null || lock === undefined) return null;
    return { state: 'held', release: () => void lock.release().catch(() => {}) };
  }

  async function byPicture(): Promise<{ state: Awake; release: () => void } | null> {
    const canvas = page.document.createElement('canvas');
    const drawing = canvas.getContext('2d');
    if (drawing === null || typeof canvas.captureStream !== 'function') return null;
    [canvas.width, canvas.height] = [16, 16];
    const video = page.document.createElement('video');
    // A stream of the page's own: nothing is loaded, so the content security policy has nothing to allow.
    const stream = canvas.captureStream();
    let shade = 0;
    const draw = (): void => {
      shade = 1 - shade;
      drawing.fillStyle = shade === 0 ? '#000000' : '#010101';
      drawing.fillRect(0, 0, 16, 16);
    };
    draw();
    const timer = setInterval(draw, frameMs);
    video.srcObject = stream;
    video.muted = true;
    video.setAttribute('playsinline', '');
    video.setAttribute('aria-hidden', 'true');
    // In the corner and all but clear, yet on the screen: what is off it does not count as playing.
    Object.assign(video.style, {
      position: 'fixed',
      right: '0',
      bottom: '0',
      width: '16px',
      opacity: '0.01',
      pointerEvents: 'none',
    });
    page.document.body.append(video);
    const end = (): void => {
      clearInterval(timer);
      for (const track of stream.getTracks()) track.stop();
      video.remove();
    };
    try {
      await video.play();
      return { state: 'likely', release: end };
    } catch {
      end();
      return null;
    }
  }

  return {
    state,
    begin: async () => {
      if (wanted) return;
      wanted = true;
      page.document.addEventListener('visibilitychange', onVisible);
      await take();
    },
    end: () => {
      wanted = false;
      page.document.removeEventListener('visibilitychange', onVisible);
      release();
      release = () => {};
      state.set('off');
    },
  };
}
