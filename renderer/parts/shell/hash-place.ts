import { useSyncExternalStore } from 'react';

/**
 * The program's places stand behind the `#` of the address, and what was chosen at a place behind a `?` there:
 * `#/review/athlete/1?station=wall-throw`. Choosing something is no other place: the page stays where it is.
 */
function split(): { readonly path: string; readonly query: string } {
  const [path = '', query = ''] = window.location.hash.replace(/^#?\/?/, '').split('?');
  return { path: `/${path}`, query };
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

const path = (): string => split().path;
const query = (): string => split().query;

/** Goes to a place, its choices behind a `?`; with `replace` the way back leads past the present one. */
export function goToPlace(to: string, { state = null, replace = false }: { state?: unknown; replace?: boolean } = {}) {
  const before = window.location.href;
  const url = new URL(before);
  url.hash = `#${to}`;
  window.history[replace ? 'replaceState' : 'pushState'](state, '', url.href);
  // The browser tells of its own steps only.
  window.dispatchEvent(new HashChangeEvent('hashchange', { oldURL: before, newURL: url.href }));
}

/** The place and the way to another, as wouter's router asks for them. */
export function useHashPlace(): [string, typeof goToPlace] {
  return [useSyncExternalStore(subscribe, path), goToPlace];
}
useHashPlace.hrefs = (href: string): string => `#${href}`;

/** What was chosen at the place, and a way to choose otherwise, which the way back does not lead to. */
export function useQuery(): [URLSearchParams, (change: (params: URLSearchParams) => void) => void] {
  const text = useSyncExternalStore(subscribe, query);
  const change = (edit: (params: URLSearchParams) => void): void => {
    const params = new URLSearchParams(query());
    edit(params);
    const next = params.toString();
    if (next !== query()) goToPlace(next === '' ? path() : `${path()}?${next}`, { replace: true });
  };
  return [new URLSearchParams(text), change];
}
