import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import type { AnyRouter } from '@orpc/server';
import { RPCHandler } from '@orpc/server/ws';
import { type WebSocket, WebSocketServer } from 'ws';
import { refuseSocket } from '../browser/sockets.ts';
import type { Intake } from '../intake.ts';
import { type PadAsking, padWords } from './gate.ts';
import { messageMeter } from './meter.ts';

/**
 * The largest message taken from a pad, in bytes: a batch of a hundred events, and room.
 * @internal exported for the test that sends more
 */
export const largestPadMessage = 256 * 1024;
const mostConnections = 128;
/** A pad has one page; a second one may be open while the first is being left. */
const mostOfOnePad = 3;
/** A pad that takes nothing in while this much waits for it is given up; it connects again and asks anew. */
const mostWaiting = 8 * 1024 * 1024;
/** What a pad may send at once, and each second from then on; a judge's calls and a clock's alignment lie far below. */
const burst = 400;
const perSecond = 50;

/** Close codes of our own, after the standard's 4000 (RFC 6455, 7.4.2). */
const closeCodes = { sentAway: 4001, tooFast: 4008 } as const;

export interface PadSockets {
  readonly take: (request: IncomingMessage, socket: Duplex, head: Buffer, pad: PadAsking) => void;
  /** Ends all connections of a pad. */
  readonly endOf: (device: string) => void;
  readonly count: (device: string) => number;
  readonly close: (milliseconds: number) => Promise<void>;
}

/** @param onChange a pad's connection was opened or ended */
export function padSockets(
  router: AnyRouter,
  intake: Intake,
  heartbeatMs: number,
  onChange: (pad: PadAsking) => void,
): PadSockets {
  const handler = new RPCHandler<PadAsking>(router, { clientInterceptors: [intake.around] });
  const server = new WebSocketServer({ noServer: true, maxPayload: largestPadMessage, perMessageDeflate: false });
  const pads = new Map<WebSocket, PadAsking>();
  const answered = new WeakSet<WebSocket>();

  function connected(socket: WebSocket, pad: PadAsking): void {
    const own = socketsOf(pad.device);
    for (const oldest of own.slice(0, Math.max(0, own.length + 1 - mostOfOnePad))) oldest.terminate();
    pads.set(socket, pad);
    answered.add(socket);
    const meter = messageMeter(burst, perSecond);
    socket.on('pong', () => answered.add(socket));
    socket.on('message', () => {
      if (!meter(performance.now())) socket.close(closeCodes.tooFast, padWords.tooFast);
    });
    // A frame too large or malformed: the socket closes itself with the reason's code.
    socket.on('error', () => socket.terminate());
    socket.on('close', () => {
      pads.delete(socket);
      onChange(pad);
    });
    void handler.upgrade(socket, { context: { night: pad.night, device: pad.device } });
    onChange(pad);
  }

  function socketsOf(device: string): WebSocket[] {
    return [...pads].filter(([, pad]) => pad.device === device).map(([socket]) => socket);
  }

  const heartbeat = setInterval(() => {
    for (const socket of server.clients) {
      if (!answered.delete(socket) || socket.bufferedAmount > mostWaiting) socket.terminate();
      else socket.ping();
    }
  }, heartbeatMs);
  heartbeat.unref();

  return {
    take: (request, socket, head, pad) => {
      if (server.clients.size >= mostConnections) return refuseSocket(socket, { status: 503, words: padWords.crowded });
      server.handleUpgrade(request, socket, head, (opened) => connected(opened, pad));
      return undefined;
    },
    endOf: (device) => {
      for (const socket of socketsOf(device)) {
        socket.close(closeCodes.sentAway, padWords.sentAway);
        // A page that does not say goodbye must not keep what it may do no longer.
        setTimeout(() => socket.terminate(), 500).unref();
      }
    },
    count: (device) => socketsOf(device).length,
    close: async (milliseconds) => {
      clearInterval(heartbeat);
      const open = [...server.clients];
      const ended = open.map((socket) => new Promise((resolve) => socket.once('close', resolve)));
      for (const socket of open) socket.close(1001, 'The desk is closing.');
      const late = setTimeout(() => {
        for (const socket of open) socket.terminate();
      }, milliseconds);
      await Promise.all(ended);
      clearTimeout(late);
    },
  };
}
