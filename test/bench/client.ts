import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/websocket';
import type { ContractRouterClient } from '@orpc/contract';
import { WebSocket } from 'ws';
import type { Contract } from '../../shared-types/contract/contract.ts';

export interface BenchClient {
  readonly calls: ContractRouterClient<Contract>;
  close(): void;
}

/** Enters the running program by its address, as a browser would, and opens the WebSocket of its screens. */
export async function enterProgram(address: string): Promise<BenchClient> {
  const url = new URL(address);
  const answer = await fetch(address, { redirect: 'manual' });
  const cookie = answer.headers.get('set-cookie')?.split(';')[0] ?? '';
  await answer.arrayBuffer();
  const socket = new WebSocket(`ws://${url.host}${url.pathname}desk`, { headers: { cookie }, origin: url.origin });
  await new Promise((resolve, reject) => {
    socket.once('open', resolve);
    socket.once('error', reject);
  });
  // ws offers the browser's interface; only its own event types differ.
  const websocket = socket as unknown as globalThis.WebSocket;
  return { calls: createORPCClient(new RPCLink({ websocket })), close: () => socket.close() };
}
