import type { WebFrameMain } from 'electron';

/** The scheme and origin of the screens in the desktop window. The demonstration has an origin, and so page storage, of its own. */
export const scheme = 'app';
export type Place = 'plumbline' | 'demo';

export function originOf(place: Place): string {
  return `${scheme}://${place}`;
}

/** Whether an address is the page itself: no other host, no user, no other file, whatever stands after `#`. */
export function isPage(address: string, place: Place): boolean {
  return pathOf(address, place) === '';
}

/**
 * The path below the origin, without its leading slash; null for any address elsewhere. `URL.origin` is "null" for a
 * scheme of one's own, so the parts are compared.
 */
export function pathOf(address: string, place: Place): string | null {
  const url = URL.parse(address);
  if (url === null || url.protocol !== `${scheme}:` || url.host !== place) return null;
  if (url.username !== '' || url.password !== '' || url.port !== '') return null;
  return url.pathname.replace(/^\//, '');
}

/** Whether a message comes from the page itself, in the window's own frame, and that frame is still there. */
export function isOwnFrame(
  frame: Pick<WebFrameMain, 'url' | 'parent' | 'detached'> | null,
  place: Place,
): frame is WebFrameMain {
  return frame !== null && !frame.detached && frame.parent === null && isPage(frame.url, place);
}
