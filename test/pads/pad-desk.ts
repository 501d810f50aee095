import { EventPublisher, implement, ORPCError } from '@orpc/server';
import type { PadAsking } from '../../main/hosts/pads/gate.ts';
import { type PadLane, padContract } from '../../shared-types/contract/pad.ts';
import type { Acknowledgement } from '../../shared-types/contract/sets.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { PadRole } from '../../shared-types/night/events.ts';
import { memoryDesk, sheet, someSetup } from '../hosts/memory-desk.ts';
import { night } from './pads-fixture.ts';

type Place = { role: PadRole; lane: string | null };

/** Writes events and says what became of each. */
export type Append = (events: readonly SetEvent[]) => readonly Acknowledgement[];

/**
 * The pads' side of a desk: places by device, one set a lane, and a log that whoever uses it provides. Enough of the
 * contract to test what carries it; the desk's own answers are tested with the desk.
 */
function padDesk(append: Append, eventsOf: (set: string) => SetEvent[]) {
  const places = new Map<string, Place>();
  const had = new Map<string, Set<string>>();
  const told = new EventPublisher<Record<string, object>>();

  const answer = implement(padContract).$context<PadAsking>();
  function placeOf({ device }: PadAsking): Place {
    const place = places.get(device);
    if (place === undefined) throw refusal('The desk has given this pad no place.');
    return place;
  }
  function dutyOf(asking: PadAsking) {
    const { role, lane } = placeOf(asking);
    const named = lane === null ? null : { id: lane, name: `Lane ${lane}` };
    return {
      self: { night: { id: night, name: 'A night' }, name: asking.device, role, lane: named },
      lane: laneOf(lane),
    };
  }
  const router = answer.router({
    pad: {
      hello: answer.pad.hello.handler(({ context }) => dutyOf(context).self),
      duty: answer.pad.duty.handler(async function* ({ context, signal }) {
        const changes = told.subscribe(`place:${context.device}`, { signal });
        yield dutyOf(context);
        for await (const _change of changes) yield dutyOf(context);
      }),
      append: answer.pad.append.handler(({ input, context }) => {
        placeOf(context);
        const own = had.get(context.device);
        if (input.events.some((event) => !own?.has(event.set))) throw refusal('A set of another lane.');
        const acknowledgements = [...append(input.events)];
        for (const event of input.events) told.publish(`set:${event.set}`, { events: [event] });
        return { acknowledgements };
      }),
      log: answer.pad.log.handler(async function* ({ input, context, signal }) {
        placeOf(context);
        if (!had.get(context.device)?.has(input.set)) throw refusal('A set of another lane.');
        const coming = told.subscribe(`set:${input.set}`, { signal });
        yield { events: eventsOf(input.set) };
        yield* coming as AsyncGenerator<{ events: SetEvent[] }>;
      }),
      board: answer.pad.board.handler(() => {
        throw new ORPCError('NOT_IMPLEMENTED');
      }),
      clock: answer.pad.clock.handler(() => ({ received: Date.now(), answered: Date.now() })),
      aligned: answer.pad.aligned.handler(() => ({})),
    },
  });
  return {
    router,
    put: (device: string, role: PadRole, lane: string | null) => {
      places.set(device, { role, lane });
      if (lane !== null) had.set(device, (had.get(device) ?? new Set()).add(setOf(lane)));
      told.publish(`place:${device}`, {});
    },
    take: (device: string) => {
      places.delete(device);
    },
  };
}

function refusal(message: string): ORPCError<string, unknown> {
  return new ORPCError('NOT_ALLOWED', { status: 403, message, data: { what: 'pad' } });
}

/** The one set of a lane "1" to "99". */
export function setOf(lane: string): string {
  return `5b1d0e52-0000-4000-8000-0000000000${lane.padStart(2, '0')}`;
}

export function laneOf(lane: string | null): PadLane | null {
  if (lane === null) return null;
  const role = 'main';
  return {
    heat: 1,
    heatPhase: 'running',
    goAt: null,
    role,
    setup: someSetup(setOf(lane)),
    sheet,
    athlete: 'A',
    judge: 'J',
  };
}

/** The same over a log in memory. */
export function memoryPadDesk() {
  const memory = memoryDesk();
  return { ...padDesk(memory.append, (set) => memory.log.filter((event) => event.set === set)), log: memory.log };
}
