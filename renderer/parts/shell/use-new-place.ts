import { useEffect, useRef } from 'react';

/**
 * When the user goes to another place of the program: the page begins at its top, or, on the way back, where it was left;
 * and the focus goes to the content, unless the new screen has put it somewhere itself.
 */
export function useNewPlace(place: string): void {
  const before = useRef(place);
  const scrolls = useRef(new Map<string, number>());
  const back = useRef(false);

  useEffect(() => {
    const onPop = (): void => {
      back.current = true;
    };
    const onScroll = (): void => {
      scrolls.current.set(before.current, window.scrollY);
    };
    window.addEventListener('popstate', onPop);
    window.addEventListener('scroll', onScroll, { passive: true });
    return () => {
      window.removeEventListener('popstate', onPop);
      window.removeEventListener('scroll', onScroll);
    };
  }, []);

  useEffect(() => {
    if (before.current === place) return;
    before.current = place;
    const top = back.current ? (scrolls.current.get(place) ?? 0) : 0;
    back.current = false;
    // After the new screen has drawn itself from what it had read before.
    const frame = requestAnimationFrame(() => {
      window.scrollTo(0, top);
      const { activeElement } = document;
      if (activeElement === null || activeElement === document.body) {
        document.getElementById('content')?.focus({ preventScroll: true });
      }
    });
    return () => cancelAnimationFrame(frame);
  }, [place]);
}
