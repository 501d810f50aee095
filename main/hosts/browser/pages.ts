import type { ServerResponse } from 'node:http';
import { pageHeaders } from '../page-policy.ts';
import type { Refusal } from './gate.ts';

/** A page of one sentence. Its text is the program's own, never a part of the request. */
function page(title: string, head: string, body: string): string {
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${title}</title>${head}</head><body>${body}</body></html>\n`;
}

function send(response: ServerResponse, status: number, text: string, headers: Record<string, string> = {}): void {
  response.writeHead(status, {
    ...pageHeaders(),
    'content-type': 'text/html; charset=utf-8',
    'content-length': Buffer.byteLength(text),
    'cache-control': 'no-store',
    ...headers,
  });
  response.end(response.req.method === 'HEAD' ? undefined : text);
}

export function sendRefusal(response: ServerResponse, { status, words }: Refusal): void {
  send(response, status, page('Plumbline', '', `<h1>Plumbline</h1><p>${words}</p>`));
}

/**
 * Goes on to the program. A page and not a redirect: behind a redirect from another site's link the browser would not
 * send the strict cookie.
 */
export function sendEntry(response: ServerResponse, base: string, cookie: string | null): void {
  const head = `<meta http-equiv="refresh" content="0;url=${base}">`;
  const text = page('Plumbline', head, `<p><a href="${base}">Go on to Plumbline</a></p>`);
  send(response, 200, text, cookie === null ? {} : { 'set-cookie': cookie });
}
