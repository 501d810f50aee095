/**
 * What a pad's page risks by being left or reloaded. Plain HTTP has no service worker, so a page that is reloaded while
 * the desk cannot be reached does not come back until it can; the calls wait in IndexedDB meanwhile and are sent at the
 * next load. Where the browser keeps nothing they would be lost.
 */
export type Risk = 'none' | 'page-does-not-come-back' | 'calls-are-lost';

export interface RiskSources {
  readonly connected: () => boolean;
  readonly unsent: () => number;
  readonly storage: () => 'opening' | 'kept' | 'memory';
  /** A set is running on this pad. */
  readonly judging: () => boolean;
}

export function riskOfLeaving({ connected, unsent, storage, judging }: RiskSources): Risk {
  if (storage() !== 'kept' && unsent() > 0) return 'calls-are-lost';
  if (!connected() && (unsent() > 0 || judging())) return 'page-does-not-come-back';
  return 'none';
}

/** What the guard needs of the page: `window`. */
export type Page = Pick<Window, 'addEventListener' | 'removeEventListener'>;

/**
 * Lets the browser ask before the page is left, for as long as leaving it would risk something. Browsers show words of
 * their own there, and phones may not ask at all: so the screen tells the risk beforehand as well. The answer ends it.
 */
export function guardLeaving(sources: RiskSources, page: Page = window): () => void {
  const ask = (event: Event): void => {
    if (riskOfLeaving(sources) !== 'none') event.preventDefault();
  };
  page.addEventListener('beforeunload', ask);
  return () => page.removeEventListener('beforeunload', ask);
}
