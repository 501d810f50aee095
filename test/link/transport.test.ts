import { expect, test } from 'vitest';
import { openPort, openSocket, portAnswer, portFrom, portRequest } from '../../renderer/link/transport.ts';

const origin = 'app://plumbline';

/** As much of a window as the handshake needs, with a preload script that answers as `answers` says. */
function pageWith(answers: (page: Window, asked: unknown) => Partial<MessageEvent>[]): Window {
  const listeners = new Set<(event: MessageEvent) => void>();
  const page = {
    location: { origin },
    addEventListener: (_name: string, listener: (event: MessageEvent) => void) => listeners.add(listener),
    removeEventListener: (_name: string, listener: (event: MessageEvent) => void) => listeners.delete(listener),
    postMessage: (message: unknown) => {
      // The handshake reads these four fields of an event and no others.
      const events = answers(page, message) as MessageEvent[];
      for (const event of events) for (const listener of [...listeners]) listener(event);
    },
  } as unknown as Window;
  return page;
}

test('a port is taken from the own window and origin only', () => {
  const page = pageWith(() => []);
  const { port1, port2 } = new MessageChannel();
  const good = { source: page, origin, data: portAnswer, ports: [port2] };
  expect(portFrom(good, page)).toBe(port2);
  expect(portFrom({ ...good, source: null }, page)).toBeNull();
  expect(portFrom({ ...good, source: pageWith(() => []) }, page)).toBeNull();
  expect(portFrom({ ...good, origin: 'https://attacker.example' }, page)).toBeNull();
  expect(portFrom({ ...good, data: portRequest }, page)).toBeNull();
  expect(portFrom({ ...good, ports: [] }, page)).toBeNull();
  port1.close();
});

test('the page asks for its port and passes over what others say meanwhile', async () => {
  const { port1, port2 } = new MessageChannel();
  const asked: unknown[] = [];
  const page = pageWith((source, message) => {
    asked.push(message);
    const answer = { source, origin, data: portAnswer, ports: [port2] };
    return [{ ...answer, origin: 'https://attacker.example', ports: [port1] }, { ...answer, data: 'noise' }, answer];
  });
  const transport = await openPort(page)();
  expect(asked).toEqual([portRequest]);
  const over = new Promise((resolve) => transport.over.addEventListener('abort', resolve));
  port1.close();
  await over;
});

test('where nothing listens, the reason is in words', async () => {
  await expect(openSocket('http://127.0.0.1:9/base/')()).rejects.toThrow(/The program does not answer/);
});
