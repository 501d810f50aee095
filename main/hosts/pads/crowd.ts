import type { Server } from 'node:http';
import type { Socket } from 'node:net';

/**
 * Keeps one network address from taking all connections: those of an address beyond `most` are ended at once, before a
 * byte of them is read. The pads of others keep theirs.
 */
export function limitEachAddress(server: Server, most: number): void {
  const open = new Map<string, number>();
  server.on('connection', (socket: Socket) => {
    const from = socket.remoteAddress ?? '';
    const others = open.get(from) ?? 0;
    if (others >= most) return void socket.destroy();
    open.set(from, others + 1);
    socket.once('close', () => {
      const left = (open.get(from) ?? 1) - 1;
      if (left <= 0) open.delete(from);
      else open.set(from, left);
    });
  });
}
