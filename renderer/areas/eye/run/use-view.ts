import { useCallback, useEffect, useRef, useState } from 'react';
import { betweenPlaces, type Viewpoint } from '../viewpoint.ts';

const WALK_MS = 380;

function wantsStillness(): boolean {
  return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}

export interface View {
  readonly view: Viewpoint;
  /** At once. */
  readonly put: (view: Viewpoint) => void;
  /** In a short walk, or at once where less motion is asked for. */
  readonly walkTo: (view: Viewpoint) => void;
}

/** Where the judge stands. */
export function useView(first: Viewpoint): View {
  const [view, setView] = useState(first);
  const latest = useRef(first);
  const frame = useRef(0);
  const set = useCallback((next: Viewpoint) => {
    latest.current = next;
    setView(next);
  }, []);
  const put = useCallback(
    (next: Viewpoint) => {
      cancelAnimationFrame(frame.current);
      set(next);
    },
    [set],
  );
  const walkTo = useCallback(
    (goal: Viewpoint) => {
      cancelAnimationFrame(frame.current);
      if (wantsStillness()) return set(goal);
      const from = latest.current;
      const begun = performance.now();
      const step = (): void => {
        const share = Math.min(1, (performance.now() - begun) / WALK_MS);
        set(share === 1 ? goal : betweenPlaces(from, goal, share * share * (3 - 2 * share)));
        if (share < 1) frame.current = requestAnimationFrame(step);
      };
      frame.current = requestAnimationFrame(step);
    },
    [set],
  );
  useEffect(() => () => cancelAnimationFrame(frame.current), []);
  return { view, put, walkTo };
}
