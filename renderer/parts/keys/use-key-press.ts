import { useEffect, useEffectEvent } from 'react';

/** The next key, wherever the focus is, before anything else hears of it. */
export function useKeyPress(listening: boolean, onKey: (code: string) => void): void {
  const take = useEffectEvent(onKey);
  useEffect(() => {
    if (!listening) return;
    const listener = (event: KeyboardEvent): void => {
      if (event.repeat) return;
      event.preventDefault();
      event.stopPropagation();
      take(event.code);
    };
    window.addEventListener('keydown', listener, { capture: true });
    return () => window.removeEventListener('keydown', listener, { capture: true });
  }, [listening]);
}
