import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import type { AnyRouter } from '@orpc/server';
import { RPCHandler } from '@orpc/server/ws';
import { type WebSocket, WebSocketServer } from 'ws';
import type { Intake } from '../intake.ts';
import type { Refusal } from './gate.ts';

/**
 * The largest message taken from a page, in bytes: a thousand events, or a sheet, and room.
 * @internal exported for the test that sends more
 */
export const largestMessage = 2 * 1024 * 1024;
const mostConnections = 64;
/** A page that takes nothing in while this much waits for it is given up; it connects again and asks anew. */
const mostWaiting = 32 * 1024 * 1024;

export interface DeskSockets {
  readonly take: (request: IncomingMessage, socket: Duplex, head: Buffer) => void;
  /** Says goodbye to every page; those that do not answer are cut off after `milliseconds`. */
  readonly close: (milliseconds: number) => Promise<void>;
  readonly count: () => number;
}

/** @param heartbeatMs how often a page must show that it is there */
export function deskSockets(router: AnyRouter, intake: Intake, heartbeatMs: number): DeskSockets {
  const handler = new RPCHandler(router, { clientInterceptors: [intake.around] });
  const server = new WebSocketServer({ noServer: true, maxPayload: largestMessage, perMessageDeflate: false });
  const answered = new WeakSet<WebSocket>();

  server.on('connection', (socket) => {
    answered.add(socket);
    socket.on('pong', () => answered.add(socket));
    // A frame too large or malformed: the socket closes itself with the reason's code.
    socket.on('error', () => socket.terminate());
    void handler.upgrade(socket, { context: {} });
  });

  const heartbeat = setInterval(() => {
    for (const socket of server.clients) {
      if (!answered.delete(socket) || socket.bufferedAmount > mostWaiting) socket.terminate();
      else socket.ping();
    }
  }, heartbeatMs);
  heartbeat.unref();

  return {
    take: (request, socket, head) => {
      if (server.clients.size >= mostConnections) return socket.destroy() && undefined;
      server.handleUpgrade(request, socket, head, (opened) => server.emit('connection', opened, request));
      return undefined;
    },
    count: () => server.clients.size,
    close: async (milliseconds) => {
      clearInterval(heartbeat);
      const open = [...server.clients];
      const ended = open.map((socket) => new Promise((resolve) => socket.once('close', resolve)));
      for (const socket of open) socket.close(1001, 'The program is closing.');
      const late = setTimeout(() => {
        for (const socket of open) socket.terminate();
      }, milliseconds);
      await Promise.all(ended);
      clearTimeout(late);
    },
  };
}

/** Answers a refused upgrade in words and ends its socket. */
export function refuseSocket(socket: Duplex, { status, words }: Refusal): void {
  const body = `${words}\n`;
  socket.end(
    `HTTP/1.1 ${status} Refused\r\nconnection: close\r\ncontent-type: text/plain; charset=utf-8\r\n` +
      `content-length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
  );
}
