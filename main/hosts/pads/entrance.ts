import { implement, ORPCError } from '@orpc/server';
import { type EntranceState, entrance } from '../../../shared-types/contract/entrance.ts';
import { NotOpened, type Pads } from '../pads.ts';
import { ownAddresses } from './networks.ts';

/** Answers the desk's own calls about the pads' way in. They belong to the host: it alone opens sockets. */
export function entranceCalls(pads: Pads) {
  const calls = implement(entrance);
  return calls.router({
    addresses: calls.addresses.handler(() => ownAddresses()),
    open: calls.open.handler(async ({ input }) => {
      try {
        await pads.open(input.night, input.address, input.port);
      } catch (error) {
        if (!(error instanceof NotOpened)) throw error;
        throw new ORPCError('CONFLICT', { status: 409, message: error.message, data: { what: 'address' } });
      }
      return pads.state();
    }),
    close: calls.close.handler(async () => {
      await pads.close();
      return pads.state();
    }),
    state: calls.state.handler(() => pads.state()),
    watch: calls.watch.handler(({ signal }) => states(pads, signal)),
    code: calls.code.handler(() => {
      const made = pads.newCode();
      if (made !== null) return made;
      const message = 'The way in for pads is closed. Open it first.';
      throw new ORPCError('CONFLICT', { status: 409, message, data: { what: 'closed' } });
    }),
    forget: calls.forget.handler(({ input }) => {
      if (pads.forget(input.pad)) return pads.state();
      throw new ORPCError('NOT_FOUND', { status: 404, message: 'No such pad has joined.', data: { what: 'pad' } });
    }),
  });
}

/** The state now and after changes; changes that come faster than they are read are told as one. */
async function* states(pads: Pads, signal: AbortSignal | undefined): AsyncGenerator<EntranceState> {
  let wake = Promise.withResolvers<void>();
  const stop = pads.listen(() => wake.resolve());
  signal?.addEventListener('abort', () => wake.resolve(), { once: true });
  try {
    while (!signal?.aborted) {
      wake = Promise.withResolvers();
      yield pads.state();
      await wake.promise;
    }
  } finally {
    stop();
  }
}
