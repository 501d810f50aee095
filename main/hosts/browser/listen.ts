import { randomInt } from 'node:crypto';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** The port asked for cannot be had; the message says so in a sentence. */
export class PortTaken extends Error {
  override readonly name = 'PortTaken';
}

/**
 * Listens on loopback: on the port that is asked for, else on the remembered one, else on a free one. Free ones are drawn
 * from below the range that operating systems hand out by themselves, so that the same one is likely free next time.
 */
export async function listenOn(
  server: Server,
  asked: number | undefined,
  remembered: number | undefined,
): Promise<{ port: number; moved: boolean }> {
  if (asked !== undefined) {
    if (await listens(server, asked)) return { port: portOf(server), moved: false };
    throw new PortTaken(
      `Port ${asked} cannot be used (another program has it, or it is reserved); choose another with --port, or leave it out.`,
    );
  }
  if (remembered !== undefined && (await listens(server, remembered))) return { port: remembered, moved: false };
  for (let attempt = 0; attempt < 20; attempt += 1) {
    if (await listens(server, randomInt(20_000, 32_000))) break;
  }
  if (!server.listening && !(await listens(server, 0))) throw new PortTaken('No port on 127.0.0.1 can be had.');
  return { port: portOf(server), moved: remembered !== undefined };
}

function portOf(server: Server): number {
  return (server.address() as AddressInfo).port;
}

/** False where the port is taken or not allowed. */
function listens(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const fail = (error: NodeJS.ErrnoException): void => {
      server.off('listening', succeed);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    const succeed = (): void => {
      server.off('error', fail);
      resolve(true);
    };
    server.once('error', fail);
    server.once('listening', succeed);
    server.listen(port, '127.0.0.1');
  });
}
