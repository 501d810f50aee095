import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { MessageChannel } from 'node:worker_threads';
import { RPCHandler as PortHandler } from '@orpc/server/message-port';
import { RPCHandler as SocketHandler } from '@orpc/server/ws';
import { afterEach, expect, test, vi } from 'vitest';
import { WebSocketServer } from 'ws';
import { DeskAway } from '../../renderer/link/desk-away.ts';
import { type Link, linkOver } from '../../renderer/link/link.ts';
import { memoryStore, type OutboxStore } from '../../renderer/link/store.ts';
import { type OpenTransport, openSocket, overPort } from '../../renderer/link/transport.ts';
import { type MemoryDesk, memoryDesk, sheet, somebody, someSetup } from '../hosts/memory-desk.ts';
import { callDraft, goDraft, until } from './drafts.ts';

vi.setConfig({ testTimeout: 30_000 });

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

const timings = { waitMs: 200, firstPauseMs: 10, longestPauseMs: 50, pulseMs: 5_000 };

function linked(open: OpenTransport, store: OutboxStore = memoryStore()): Link {
  const link = linkOver({ open, openStore: async () => store, timings });
  ends.push(() => link.close());
  return link;
}

function portTo(desk: MemoryDesk): OpenTransport {
  return async () => {
    const { port1, port2 } = new MessageChannel();
    new PortHandler(desk.router).upgrade(port1);
    port1.start();
    ends.push(() => port1.close());
    // Node's MessagePort and the page's are one interface to oRPC; only their event types differ.
    return overPort(port2 as unknown as MessagePort);
  };
}

async function socketTo(desk: MemoryDesk, port = 0) {
  const server = createServer();
  const sockets = new WebSocketServer({ server, path: '/base/desk' });
  sockets.on('connection', (socket) => void new SocketHandler(desk.router).upgrade(socket));
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const stop = async (): Promise<void> => {
    for (const socket of sockets.clients) socket.terminate();
    await new Promise((resolve) => server.close(resolve));
  };
  ends.push(stop);
  const bound = (server.address() as AddressInfo).port;
  return { open: openSocket(`http://127.0.0.1:${bound}/base/`), port: bound, stop };
}

const ways: [string, (desk: MemoryDesk) => Promise<OpenTransport>][] = [
  ['a MessagePort', async (desk) => portTo(desk)],
  ['a WebSocket', async (desk) => (await socketTo(desk)).open],
];

test.each(ways)('over %s calls, refusals and streams come through', async (_name, way) => {
  const desk = memoryDesk();
  const link = linked(await way(desk));
  expect(link.state.get()).toBe('connecting');
  expect((await link.client.desk.about()).databasePath).toBe(':memory:');
  expect(link.state.get()).toBe('connected');
  await expect(link.client.sets.get({ id: somebody.id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  // @ts-expect-error the contract asks for an id: the desk must check what a page sends all the same
  await expect(link.client.sets.get({ id: 7 })).rejects.toMatchObject({ code: 'BAD_REQUEST' });

  const setup = someSetup(crypto.randomUUID());
  link.outbox.begin({ setup, sheet, athlete: somebody, judge: somebody });
  const seen = link.openSet(setup.id);
  const go = link.outbox.put(goDraft(setup.id));
  expect(seen.get().events).toEqual([go]);
  expect(seen.pending.get()).toBe(1);
  await until(() => seen.pending.get() === 0 && seen.get().live);
  expect(desk.log).toEqual([go]);

  const other = { ...callDraft(setup.id, 900), pad: 'other', seq: 1 };
  desk.append([other]);
  await until(() => seen.get().events.length === 2);
  expect(seen.get()).toMatchObject({ status: 'open', start: { setup } });
  seen.close();
  await until(() => desk.listeners.size === 0);
});

test('while the desk is away taps are kept and calls reject typed; on its return all goes on', async () => {
  const desk = memoryDesk();
  const first = await socketTo(desk);
  const link = linked(first.open);
  const setup = someSetup(crypto.randomUUID());
  link.outbox.begin({ setup, sheet, athlete: somebody, judge: somebody });
  const seen = link.openSet(setup.id);
  link.outbox.put(goDraft(setup.id));
  await until(() => desk.log.length === 1 && seen.get().live);

  await first.stop();
  await until(() => link.state.get() === 'lost');
  expect(link.trouble.get()).toMatch(/does not answer/);
  const refusal = await link.client.people.list({ archived: false }).catch((error: unknown) => error);
  expect(refusal).toBeInstanceOf(DeskAway);
  expect(refusal).toMatchObject({ kind: 'desk-away', sent: false });
  for (let rep = 1; rep <= 5; rep += 1) link.outbox.put(callDraft(setup.id, rep * 1_500));
  expect(seen.get().events).toHaveLength(6);
  expect(seen.pending.get()).toBe(5);
  await until(() => !seen.get().live);

  await socketTo(desk, first.port);
  await until(() => seen.pending.get() === 0);
  expect(link.state.get()).toBe('connected');
  expect(link.trouble.get()).toBeNull();
  expect(desk.log.map((event) => event.seq)).toEqual([1, 2, 3, 4, 5, 6]);
  desk.append([{ ...callDraft(setup.id, 9_000), pad: 'other', seq: 1 }]);
  await until(() => seen.get().events.length === 7 && seen.get().live);
});

test('a call whose connection breaks before the answer says that it may have been carried out', async () => {
  const desk = memoryDesk();
  const server = await socketTo(desk);
  const link = linked(server.open);
  const setup = someSetup(crypto.randomUUID());
  await link.client.sets.create(setup);
  const reached = Promise.withResolvers<void>();
  desk.beforeAppend = () => {
    reached.resolve();
    return new Promise(() => {});
  };
  const call = link.client.sets
    .append({ events: [{ ...goDraft(setup.id), pad: 'direct', seq: 1 }] })
    .catch((error: unknown) => error);
  await reached.promise;
  await server.stop();
  const refusal = await call;
  expect(refusal).toBeInstanceOf(DeskAway);
  expect(refusal).toMatchObject({ kind: 'desk-away', sent: true });
});

test('a set that the desk does not know is told as not found, and opened once it is there', async () => {
  const desk = memoryDesk();
  const link = linked(portTo(desk));
  const setup = someSetup(crypto.randomUUID());
  const seen = link.openSet(setup.id);
  await until(() => seen.get().status === 'not-found');
  desk.sets.set(setup.id, setup);
  await until(() => seen.get().status === 'open');
  expect(seen.get().start?.setup).toEqual(setup);
});

test('after a reload with the desk gone, a running set is there with what it was judged under and its whole log', async () => {
  const desk = memoryDesk();
  const setup = someSetup(crypto.randomUUID());
  const store = memoryStore();
  const before = linked(portTo(desk), store);
  desk.sets.set(setup.id, setup);
  desk.append([{ ...goDraft(setup.id), pad: 'other', seq: 1 }]);
  const first = before.openSet(setup.id);
  await until(() => first.get().live && first.get().start !== null);
  before.outbox.put(callDraft(setup.id, 1_200));
  await until(() => before.outbox.total.get() === 0);
  before.close();

  const after = linked(() => Promise.reject(new Error('The program does not answer.')), store);
  const again = after.openSet(setup.id);
  await until(() => again.get().status === 'open' && again.get().events.length === 2);
  expect(again.get()).toMatchObject({ start: { setup, sheet, athlete: somebody }, live: false });
  const next = after.outbox.put(callDraft(setup.id, 2_700));
  expect(again.get().events).toContain(next);
  expect(again.pending.get()).toBe(1);
});
