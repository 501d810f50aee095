import type { Session } from 'electron';
import { pageHeaders } from '../page-policy.ts';
import type { ScreenFiles } from '../screen-files.ts';
import { originOf, type Place, pathOf, scheme } from './origin.ts';

/** What the page may ask for: the screen stays awake while a set is judged, and fills the monitor. */
const allowed: ReadonlySet<string> = new Set(['screen-wake-lock', 'fullscreen']);

/** Serves the screens under their own scheme and lets the session reach nothing else. */
export function guardSession(session: Session, files: ScreenFiles, place: Place): void {
  session.protocol.handle(scheme, (request) => serveFile(request, files, place));

  session.webRequest.onBeforeRequest(({ url }, answer) => {
    const isBlob = url.startsWith(`blob:${originOf(place)}/`);
    answer({ cancel: !isBlob && pathOf(url, place) === null });
  });

  session.setPermissionRequestHandler((_contents, permission, answer, details) => {
    answer(allowed.has(permission) && details.isMainFrame && pathOf(details.requestingUrl, place) !== null);
  });
  session.setPermissionCheckHandler((_contents, permission, origin) => {
    return allowed.has(permission) && pathOf(origin, place) !== null;
  });
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler(null);
  session.setSpellCheckerEnabled(false);
}

async function serveFile(request: Request, files: ScreenFiles, place: Place): Promise<Response> {
  const path = pathOf(request.url, place);
  if (request.method !== 'GET' || path === null) return new Response('Refused.', { status: 403 });
  const file = await files.read(path);
  if (file === null) return new Response('There is nothing under this address.', { status: 404 });
  return new Response(file.body, {
    headers: { ...pageHeaders(), 'content-type': file.type, 'cache-control': file.cacheControl },
  });
}
