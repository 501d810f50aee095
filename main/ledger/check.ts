import { Worker } from 'node:worker_threads';
import type { CheckRequest } from './check-worker.ts';
import { LedgerError, type LedgerErrorCode } from './errors.ts';
import type { Inspection } from './inspect.ts';

type Answer = { inspection: Inspection } | { error: { code: LedgerErrorCode; message: string } };

/** Looks at a file in a thread of its own, so that reading all of a large copy holds up no tap. Errors: as `inspect`. */
export function check(request: CheckRequest): Promise<Inspection> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./check-worker.ts', import.meta.url), { workerData: request });
    worker.once('message', (answer: Answer) => {
      if ('inspection' in answer) resolve(answer.inspection);
      else reject(new LedgerError(answer.error.code, answer.error.message));
    });
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`The check of ${request.path} ended early (${code}).`)));
  });
}
