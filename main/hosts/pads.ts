import { createServer, type Server } from 'node:http';
import type { AnyRouter } from '@orpc/server';
import type { EntranceState } from '../../shared-types/contract/entrance.ts';
import type { Place } from './browser/gate.ts';
import { refuseSocket } from './browser/sockets.ts';
import { createIntake, type Intake } from './intake.ts';
import { limitEachAddress } from './pads/crowd.ts';
import { askingFor } from './pads/gate.ts';
import { isOwnAddress } from './pads/networks.ts';
import { createRegistry } from './pads/registry.ts';
import { answerPad } from './pads/requests.ts';
import { type PadSockets, padSockets } from './pads/sockets.ts';
import { createPairing } from './pairing.ts';
import { screenFiles } from './screen-files.ts';

export interface PadsOptions {
  /** Answers the pads' calls and nothing else; each call has who asks as its context: `PadAsking`. */
  readonly router: AnyRouter;
  /** The folder of the built screens. */
  readonly screens: string;
  /** Where port, base path and pads are remembered. */
  readonly rememberedFile: string;
  readonly heartbeatMs?: number;
  /** Connections that one network address may have open at once. */
  readonly mostOfOneAddress?: number;
  /** Milliseconds since 1970 UTC. */
  readonly now?: () => number;
}

/** It could not be opened; the message says why and what to do. */
export class NotOpened extends Error {
  override readonly name = 'NotOpened';
}

/** The pads' way in: closed until the desk opens it. */
export interface Pads {
  /** Opens it, or moves it. Rejects with `NotOpened`. */
  readonly open: (night: string, address: string, port: number | null) => Promise<void>;
  /** Opens again what was open when the program was killed, so that pads go on by themselves. Never rejects. */
  readonly resume: () => Promise<void>;
  /** Closes it: the next start will not open it by itself. */
  readonly close: () => Promise<void>;
  readonly state: () => EntranceState;
  /** Calls back after every change; the answer ends that. */
  readonly listen: (listener: () => void) => () => void;
  /** A code good once and what a QR code carries; null while it is closed. */
  readonly newCode: () => { code: string; link: string; expiresAt: number } | null;
  /** False where there is no such pad. */
  readonly forget: (pad: string) => boolean;
}

interface Listening {
  readonly night: string;
  readonly place: Place;
  readonly address: string;
  readonly port: number;
  readonly since: number;
  readonly server: Server;
  readonly sockets: PadSockets;
  readonly intake: Intake;
}

/** The first port that is tried, and how many after it. */
const usualPort = 4_700;
const portsTried = 20;
const drainMs = 3_000;
const goodbyeMs = 500;
/** What a killed program had open is opened again for this long: the length of an evening, and room. */
const resumeMs = 18 * 3_600_000;

/** The second listener, on the gym's network; its threats and what is done against each stand in README.md. */
export function createPads(options: PadsOptions): Pads {
  const now = options.now ?? Date.now;
  const registry = createRegistry(options.rememberedFile);
  const pairing = createPairing(now);
  const listeners = new Set<() => void>();
  const lastSeen = new Map<string, number>();
  let listening: Listening | null = null;
  let trouble: string | null = null;
  /** Opening and closing one after the other, never both at once. */
  let turn: Promise<void> = Promise.resolve();

  function changed(): void {
    for (const listener of [...listeners]) listener();
  }

  function inTurn(job: () => Promise<void>): Promise<void> {
    const done = turn.then(job);
    turn = done.catch(() => {});
    return done;
  }

  async function start(night: string, address: string, port: number | null): Promise<void> {
    if (!isOwnAddress(address)) {
      throw new NotOpened(`This computer has no address ${address} now. Choose one of those that it has.`);
    }
    if (listening !== null) await stop();
    const server = createServer({
      maxHeaderSize: 16_384,
      requestTimeout: 8_000,
      headersTimeout: 5_000,
      keepAliveTimeout: 5_000,
      connectionsCheckingInterval: 1_000,
    });
    server.maxConnections = 1_024;
    limitEachAddress(server, options.mostOfOneAddress ?? 32);
    const bound = await listenAt(server, address, port, registry.port());
    const place: Place = { host: `${address}:${bound}`, base: `/pad/${registry.base}/` };
    const intake = createIntake();
    const sockets = padSockets(options.router, intake, options.heartbeatMs ?? 10_000, (pad) => {
      lastSeen.set(pad.device, now());
      changed();
    });
    const files = screenFiles(options.screens);
    const parts = { place, files, registry, pairing, now, onChange: changed };
    server.on('request', (request, response) => {
      answerPad(request, response, parts).catch((error: unknown) => {
        console.error('plumbline: a pad’s request failed:', error);
        response.destroy();
      });
    });
    server.on('upgrade', (request, socket, head) => {
      socket.on('error', () => socket.destroy());
      const found = askingFor(request, place, registry);
      if ('words' in found) refuseSocket(socket, found);
      else sockets.take(request, socket, head, found);
    });
    const since = now();
    try {
      registry.noteOpen(night, bound, { address, since });
    } catch (error) {
      server.close();
      await sockets.close(0);
      throw new NotOpened(`What has joined cannot be kept in ${options.rememberedFile}: ${String(error)}`);
    }
    listening = { night, place, address, port: bound, since, server, sockets, intake };
    trouble = null;
  }

  /** Closing goes on where it cannot be noted: at worst the next start opens what was closed, and the desk is told now. */
  function noteClosed(): void {
    try {
      registry.noteClosed();
    } catch (error) {
      trouble = `It could not be noted that the way in is closed, so the next start may open it again: ${String(error)}`;
    }
  }

  async function stop(): Promise<void> {
    if (listening === null) return;
    const { server, sockets, intake } = listening;
    listening = null;
    pairing.clear();
    const closed = new Promise<void>((resolve) => server.close(() => resolve()));
    await intake.stop(drainMs);
    await sockets.close(goodbyeMs);
    server.closeAllConnections();
    await closed;
  }

  return {
    open: (night, address, port) =>
      inTurn(async () => {
        try {
          await start(night, address, port);
        } finally {
          if (listening === null) noteClosed();
          changed();
        }
      }),
    resume: () =>
      inTurn(async () => {
        const earlier = registry.openedAt();
        const night = registry.night();
        if (earlier === null || night === null) return;
        if (now() - earlier.since > resumeMs) return noteClosed();
        const usual = registry.port();
        try {
          await start(night, earlier.address, null);
          if (registry.port() !== usual) trouble = movedWords;
        } catch (error) {
          if (!(error instanceof NotOpened)) throw error;
          trouble = `The way in for pads was open when the program ended, and could not be opened again. ${error.message}`;
        }
        changed();
      }).catch((error: unknown) => console.error('plumbline: the way in for pads could not be opened:', error)),
    close: () =>
      inTurn(async () => {
        trouble = null;
        noteClosed();
        await stop();
        changed();
      }),
    state: () => ({
      open: listening === null ? null : openState(listening),
      trouble: pairing.guessed() ? guessedWords : trouble,
      pads: registry.all().map(({ id, callsItself, joinedAt, from }) => ({
        id,
        callsItself,
        joinedAt,
        from,
        connections: listening?.sockets.count(id) ?? 0,
        lastSeenAt: lastSeen.get(id) ?? null,
      })),
    }),
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    newCode: () => {
      if (listening === null) return null;
      const { code, expiresAt } = pairing.newCode();
      changed();
      // Behind the hash, so that no server's log and no Referer ever holds the code.
      return { code, link: `http://${listening.place.host}${listening.place.base}#/join/${code}`, expiresAt };
    },
    forget: (pad) => {
      if (!registry.forget(pad)) return false;
      listening?.sockets.endOf(pad);
      changed();
      return true;
    },
  };
}

const guessedWords =
  'Somebody on this network is guessing codes, so every code that was out has been made worthless. A new one works.';

const movedWords =
  'The usual port was taken, so pads need the new address. Calls that a page of the old one could not send stay with ' +
  'that page until the port is free and the way in is opened there again.';

function openState({ night, address, port, place, since }: Listening): NonNullable<EntranceState['open']> {
  return { night, address, port, url: `http://${place.host}/`, since };
}

/** The port asked for, else the remembered one, else the first free one from the usual one on. */
async function listenAt(server: Server, address: string, asked: number | null, usual: number | null): Promise<number> {
  const ports = Array.from({ length: portsTried }, (_, index) => usualPort + index);
  const wanted = asked === null ? [...(usual === null ? [] : [usual]), ...ports] : [asked];
  for (const port of wanted) if (await listens(server, address, port)) return port;
  throw new NotOpened(
    asked === null
      ? `No port from ${usualPort} to ${usualPort + portsTried - 1} can be had at ${address}. Name another one.`
      : `Port ${asked} at ${address} cannot be used: another program has it, or it is reserved. Name another one.`,
  );
}

function listens(server: Server, address: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const fail = (): void => {
      server.off('listening', succeed);
      resolve(false);
    };
    const succeed = (): void => {
      server.off('error', fail);
      resolve(true);
    };
    server.once('error', fail);
    server.once('listening', succeed);
    server.listen(port, address);
  });
}
