import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type RawData, WebSocket, WebSocketServer } from 'ws';
import type { Random } from '../../shared-types/motion/random.ts';

/** What a bad line does. Shares are of all messages; spans in milliseconds. */
export interface Badness {
  /** Messages to the desk that arrive a second time, some time later. */
  readonly twice: number;
  /** Messages that are held back; the longer ones arrive behind later ones. */
  readonly late: number;
  readonly longestLateMs: number;
  /** A connection is cut after a random time, on average this long; what is on its way is lost. */
  readonly cutAfterMs: number;
}

export interface BadLine {
  readonly port: number;
  readonly done: { cuts: number; twice: number; late: number };
  /** From now on the line is a good one. */
  readonly mend: () => void;
  readonly close: () => Promise<void>;
}

/**
 * A line on loopback between pads and the desk that carries WebSocket messages badly. TCP itself would keep their order and
 * number; here the desk gets what a broken proxy or a page that sends again might make of them. Answers come late and
 * break off, but stay in order, as streams need it.
 */
export async function badLine(target: () => number, badness: Badness, chance: Random): Promise<BadLine> {
  const done = { cuts: 0, twice: 0, late: 0 };
  let bad = true;
  const server = createServer((_request, response) => response.writeHead(404).end());
  const taking = new WebSocketServer({ server, perMessageDeflate: false });

  taking.on('connection', (pad, request) => {
    const { host, origin, cookie } = request.headers;
    const headers = { ...(host === undefined ? {} : { host }), ...(cookie === undefined ? {} : { cookie }) };
    const named = origin === undefined ? {} : { origin };
    const desk = new WebSocket(`ws://127.0.0.1:${target()}${request.url}`, { headers, ...named });
    const waiting: { data: RawData; binary: boolean }[] = [];
    const end = (): void => {
      pad.terminate();
      desk.terminate();
    };
    for (const side of [pad, desk]) side.on('error', end).on('close', end);
    const toDesk = (data: RawData, binary: boolean): void => {
      if (desk.readyState === desk.OPEN) desk.send(data, { binary });
    };
    pad.on('message', (data, binary) => {
      if (desk.readyState === desk.CONNECTING) waiting.push({ data, binary });
      else carry(data, binary, toDesk);
    });
    desk.on('open', () => {
      for (const { data, binary } of waiting.splice(0)) toDesk(data, binary);
    });
    let answers: Promise<unknown> = Promise.resolve();
    desk.on('message', (data, binary) => {
      const wait = lateness();
      answers = answers.then(async () => {
        if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
        if (pad.readyState === pad.OPEN) pad.send(data, { binary });
      });
    });
    const cut = setTimeout(
      () => {
        if (!bad || pad.readyState !== pad.OPEN) return;
        done.cuts += 1;
        end();
      },
      -Math.log(1 - chance.uniform()) * badness.cutAfterMs,
    );
    pad.on('close', () => clearTimeout(cut));
  });

  function lateness(): number {
    if (!bad || chance.uniform() >= badness.late) return 0;
    done.late += 1;
    return chance.uniform() * badness.longestLateMs;
  }

  function carry(data: RawData, binary: boolean, on: (data: RawData, binary: boolean) => void): void {
    const wait = lateness();
    if (wait > 0) setTimeout(on, wait, data, binary);
    else on(data, binary);
    if (!bad || chance.uniform() >= badness.twice) return;
    done.twice += 1;
    setTimeout(on, chance.uniform() * badness.longestLateMs, data, binary);
  }

  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    done,
    mend: () => {
      bad = false;
    },
    close: async () => {
      for (const socket of taking.clients) socket.terminate();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
