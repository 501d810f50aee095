import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Observable } from '../../link/observable.ts';

/**
 * The value of an observable, painted at most once a frame and within the frame of its change. Only painting is thinned
 * out: whoever acts on the value reads it from the observable itself.
 */
export function useFramed<T>(source: Observable<T> | null, before: T): T {
  const [value, setValue] = useState<T>(() => source?.get() ?? before);
  useEffect(() => {
    if (source === null) return;
    let frame = 0;
    const change = (): void => {
      if (frame !== 0) return;
      frame = requestAnimationFrame(() => {
        frame = 0;
        flushSync(() => setValue(() => source.get()));
      });
    };
    setValue(() => source.get());
    const stop = source.subscribe(change);
    return () => {
      stop();
      cancelAnimationFrame(frame);
    };
  }, [source]);
  return value;
}
