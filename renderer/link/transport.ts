import type { ClientContext, ClientLink } from '@orpc/client';
import { RPCLink as PortLink } from '@orpc/client/message-port';
import { RPCLink as SocketLink } from '@orpc/client/websocket';

/** One connection to the desk, from its opening to its end. */
export interface Transport {
  readonly link: ClientLink<ClientContext>;
  /** Aborted once the connection is over, however that came about. */
  readonly over: AbortSignal;
  readonly close: () => void;
}

/** Opens one connection; rejects with an Error whose message can be shown. */
export type OpenTransport = () => Promise<Transport>;

const answerMs = 5_000;
/**
 * What page and preload say to each other on the window; the main process checks the sender as well.
 * @internal exported for the tests of both sides
 */
export const portRequest = 'plumbline:desk-port?';
/** @internal exported for the tests of both sides */
export const portAnswer = 'plumbline:desk-port';

/**
 * A WebSocket to the page's own origin. `base` is the page's own address, where the socket's path is `desk`.
 * @param why says in words why it could not be opened
 */
export function openSocket(base: string, why: (base: string) => Promise<string> = whyNot): OpenTransport {
  const address = new URL('desk', base);
  address.protocol = address.protocol === 'https:' ? 'wss:' : 'ws:';
  return async () => {
    const socket = new WebSocket(address);
    // Listens before the link does, so that a call which the end breaks off finds the signal aborted.
    const over = endOf(socket);
    const link = new SocketLink({ websocket: socket });
    const opened = await new Promise<boolean>((resolve) => {
      socket.addEventListener('open', () => resolve(true), { once: true });
      over.addEventListener('abort', () => resolve(false), { once: true });
      setTimeout(resolve, answerMs, false);
    });
    if (!opened) {
      socket.close();
      throw new Error(await why(base));
    }
    return { link, over, close: () => socket.close() };
  };
}

/** A browser does not tell why a WebSocket was refused; a plain request does. */
async function whyNot(base: string): Promise<string> {
  const answer = await fetch(new URL('pulse', base), {
    cache: 'no-store',
    signal: AbortSignal.timeout(answerMs),
  }).catch(() => null);
  if (answer?.status === 403 || answer?.status === 401) {
    return 'This page is no longer let in: open the address that the program prints (start it again for a new one).';
  }
  return 'The program does not answer. Calls are kept here and sent when it is back.';
}

/** A MessagePort that the preload script of the desktop window fetches from the main process. */
export function openPort(page: Window): OpenTransport {
  return async () => {
    const port = await new Promise<MessagePort>((resolve, reject) => {
      const timer = setTimeout(() => {
        page.removeEventListener('message', hear);
        reject(new Error('The program does not answer. Calls are kept here and sent when it is back.'));
      }, answerMs);
      const hear = (event: MessageEvent): void => {
        const port = portFrom(event, page);
        if (port === null) return;
        clearTimeout(timer);
        page.removeEventListener('message', hear);
        resolve(port);
      };
      page.addEventListener('message', hear);
      page.postMessage(portRequest, page.location.origin);
    });
    return overPort(port);
  };
}

/**
 * A connection over a MessagePort whose other end the desk answers.
 * @internal exported for the tests, which hold the other end
 */
export function overPort(port: MessagePort): Transport {
  const over = endOf(port);
  const link = new PortLink({ port });
  port.start();
  return { link, over, close: () => port.close() };
}

function endOf(peer: EventTarget): AbortSignal {
  const ended = new AbortController();
  peer.addEventListener('close', () => ended.abort(), { once: true });
  return ended.signal;
}

/**
 * The port that a message carries, if it comes from this very window and origin.
 * @internal exported for its test
 */
export function portFrom(
  event: Pick<MessageEvent, 'source' | 'origin' | 'data' | 'ports'>,
  page: Window,
): MessagePort | null {
  if (event.source !== page || event.origin !== page.location.origin || event.data !== portAnswer) return null;
  return event.ports[0] ?? null;
}
