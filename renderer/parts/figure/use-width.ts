import { type RefObject, useEffect, useRef, useState } from 'react';

/** The width of an element in CSS pixels, as it changes; `initial` until it is measured. */
export function useWidth<E extends Element>(initial: number): [RefObject<E | null>, number] {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(initial);
  useEffect(() => {
    const target = element.current;
    if (target === null) return;
    const observer = new ResizeObserver(([entry]) => {
      const measured = Math.round(entry?.contentRect.width ?? 0);
      if (measured > 0) setWidth(measured);
    });
    observer.observe(target);
    return () => observer.disconnect();
  }, []);
  return [element, width];
}
