import { type RefObject, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** The width of an element in CSS pixels, as it changes; `initial` until it is measured. */
export function useWidth<E extends Element>(initial: number): [RefObject<E | null>, number] {
  const [element, { width }] = useSize<E>(initial, 0);
  return [element, width];
}

/**
 * The width of an element, and the height that a drawing in it should have. On paper both come from the custom properties
 * `--print-width` and `--print-height` (CSS pixels) where a page sets them: a browser lays a page out for paper without
 * telling anybody the new sizes, so a drawing made for the screen would only be shrunk, its texts with it.
 */
export function useSize<E extends Element>(
  initial: number,
  height: number,
): [RefObject<E | null>, { readonly width: number; readonly height: number }] {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(initial);
  const [printed, setPrinted] = useState<{ readonly width: number; readonly height: number } | null>(null);
  useEffect(() => {
    const target = element.current;
    if (target === null) return;
    const observer = new ResizeObserver(([entry]) => {
      const measured = Math.round(entry?.contentRect.width ?? 0);
      if (measured > 0) setWidth(measured);
    });
    const pixels = (name: string): number => Number.parseFloat(getComputedStyle(target).getPropertyValue(name));
    const onPaper = (): void => {
      const [wide, tall] = [pixels('--print-width'), pixels('--print-height') || 0];
      if (wide > 0) flushSync(() => setPrinted({ width: wide, height: tall }));
    };
    const offPaper = (): void => setPrinted(null);
    observer.observe(target);
    window.addEventListener('beforeprint', onPaper);
    window.addEventListener('afterprint', offPaper);
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', onPaper);
      window.removeEventListener('afterprint', offPaper);
    };
  }, []);
  if (printed === null) return [element, { width, height }];
  return [element, { width: printed.width, height: height > 0 && printed.height > 0 ? printed.height : height }];
}
