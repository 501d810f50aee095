import { useEffect, useSyncExternalStore } from 'react';
import type { Settings } from '../../../shared-types/contract/settings.ts';

export type Look = 'paper' | 'hall';

const darkQuery = '(prefers-color-scheme: dark)';
const rememberedAs = 'look';

function usePrefersDark(): boolean {
  return useSyncExternalStore(
    (listener) => {
      const query = window.matchMedia(darkQuery);
      query.addEventListener('change', listener);
      return () => query.removeEventListener('change', listener);
    },
    () => window.matchMedia(darkQuery).matches,
  );
}

/**
 * The look of a screen: the user's choice; else the computer's, and the dark one on a floor screen.
 * @internal exported for its test, which asks it directly
 */
export function lookOf(theme: Settings['theme'], floor: boolean, prefersDark: boolean): Look {
  if (theme !== 'system') return theme;
  return floor || prefersDark ? 'hall' : 'paper';
}

/** Puts the look on the root element; the last one is remembered so that the next start does not flash. */
export function useTheme(theme: Settings['theme'], floor: boolean): Look {
  const look = lookOf(theme, floor, usePrefersDark());
  useEffect(() => {
    document.documentElement.dataset.theme = look;
    if (!floor) remember(look);
  }, [look, floor]);
  return look;
}

function remember(look: Look): void {
  try {
    localStorage.setItem(rememberedAs, look);
  } catch {
    // Without storage the next start shows the light look for a moment; nothing else depends on it.
  }
}

/** Before the first paint: the look of last time. */
export function applyRememberedLook(): void {
  try {
    if (localStorage.getItem(rememberedAs) === 'hall') document.documentElement.dataset.theme = 'hall';
  } catch {
    // As above.
  }
}
