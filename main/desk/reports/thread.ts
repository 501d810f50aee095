import { MessagePort, parentPort, workerData } from 'node:worker_threads';
import { RPCHandler } from '@orpc/server/message-port';
import { z } from 'zod';
import { openReader } from '../../ledger/open.ts';
import { threadCalls } from './thread-calls.ts';

const { path, port } = z.object({ path: z.string(), port: z.instanceof(MessagePort) }).parse(workerData);
const ledger = openReader(path);
new RPCHandler(threadCalls(ledger)).upgrade(port);
port.start();
parentPort?.once('message', () => {
  ledger.close();
  port.close();
});
