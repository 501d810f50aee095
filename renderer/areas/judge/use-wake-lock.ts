import { useEffect, useState } from 'react';

/** Keeps the screen awake while `wanted`; false where the browser does not, so that the screen can say so. */
export function useWakeLock(wanted: boolean): boolean {
  const [held, setHeld] = useState(true);
  useEffect(() => {
    if (!wanted) return;
    let lock: WakeLockSentinel | null = null;
    let over = false;
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible' || (lock !== null && !lock.released)) return;
      try {
        const given = await navigator.wakeLock.request('screen');
        if (over) return void given.release();
        lock = given;
        setHeld(true);
      } catch {
        // Not offered, or refused (a low battery, say): the screen tells it in words.
        if (!over) setHeld(false);
      }
    };
    // The browser lets go of the lock whenever the page is hidden.
    const onVisible = (): void => void ask();
    document.addEventListener('visibilitychange', onVisible);
    void ask();
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', onVisible);
      void lock?.release();
    };
  }, [wanted]);
  return held;
}
