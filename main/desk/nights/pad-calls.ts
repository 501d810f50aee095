import { implement, ORPCError } from '@orpc/server';
import { type PadLane, type PadSelf, padContract } from '../../../shared-types/contract/pad.ts';
import { begunHeats } from '../../../shared-types/night/fold.ts';
import type { NightPad } from '../../../shared-types/night/state.ts';
import { calledName } from '../../../shared-types/people.ts';
import { appendEvents } from '../append-events.ts';
import type { DeskParts } from '../calls.ts';
import { asFailure } from '../failures.ts';
import { watchSet } from '../watch-set.ts';
import { watchBoard } from './board.ts';
import type { NightBook } from './book.ts';

/** Who asks: the host has let this device in to this night. */
export interface PadContext {
  readonly night: string;
  readonly device: string;
}

const padCalls = implement(padContract)
  .$context<PadContext>()
  .use(async ({ next }) => {
    try {
      return await next();
    } catch (error) {
      throw asFailure(error);
    }
  });

/** Answers the pads' contract: each device its own lane in its own role, and nothing else of the desk. */
export function padRouter(parts: DeskParts, book: NightBook) {
  const desk = new PadDesk(parts, book);
  const { pad } = padCalls;
  return padCalls.router({
    pad: pad.router({
      hello: pad.hello.handler(({ context }) => desk.self(context)),
      duty: pad.duty.handler(({ context, signal }) => desk.duty(context, signal)),
      append: pad.append.handler(({ context, input }) => {
        const own = desk.ownSets(context);
        if (input.events.some(({ set }) => !own.has(set))) throw notAllowed('It is not a set of this pad.', 'set');
        return { acknowledgements: appendEvents(parts, input.events) };
      }),
      log: pad.log.handler(({ context, input, signal }) => {
        if (!desk.ownSets(context).has(input.set)) throw notAllowed('It is not a set of this pad.', 'set');
        const events = watchSet(parts.ledger.log, parts.changes, input.set, signal);
        return whileAllowed(events, () => desk.ownSets(context).has(input.set));
      }),
      board: pad.board.handler(({ context, signal }) => {
        if (desk.self(context).role !== 'board') throw notAllowed('Only a board shows all lanes.', 'board');
        const board = watchBoard(parts, book, context.night, signal);
        return whileAllowed(board, () => desk.self(context).role === 'board');
      }),
      clock: pad.clock.handler(() => {
        const received = parts.now();
        return { received, answered: parts.now() };
      }),
      aligned: pad.aligned.handler(({ context, input }) => {
        if (!desk.ownSets(context).has(input.set)) throw notAllowed('It is not a set of this pad.', 'set');
        book.aligned(context.night, context.device, input);
        return {};
      }),
    }),
  });
}

export type PadRouter = ReturnType<typeof padRouter>;

class PadDesk {
  private readonly parts: DeskParts;
  private readonly book: NightBook;

  constructor(parts: DeskParts, book: NightBook) {
    this.parts = parts;
    this.book = book;
  }

  self(context: PadContext): PadSelf {
    const { night, state } = this.book.get(context.night);
    const { name, role, lane } = this.padOf(context);
    const found = state.arrangement?.lanes.find(({ id }) => id === lane);
    return {
      night: { id: night.id, name: night.name },
      name,
      role,
      lane: role === 'board' || found === undefined ? null : { id: found.id, name: found.name },
    };
  }

  /** Sets that were opened on a lane while this device had it, or had it before, in the role it had there. */
  ownSets(context: PadContext): ReadonlySet<string> {
    this.padOf(context);
    const { events, state } = this.book.get(context.night);
    const places = new Set(
      events.flatMap((event) =>
        event.kind === 'pad' && event.device === context.device ? [`${event.role} ${event.lane}`] : [],
      ),
    );
    const lanes = state.heats.flatMap((heat) => heat.lanes);
    const sets = lanes.flatMap(({ lane, set, shadowSet }) => [
      ...(places.has(`judge ${lane}`) ? [set] : []),
      ...(places.has(`shadow ${lane}`) ? [shadowSet] : []),
    ]);
    return new Set(sets.filter((set) => set !== null));
  }

  async *duty(context: PadContext, signal: AbortSignal | undefined) {
    const pulses = this.parts.changes.watchNight(context.night, signal);
    yield { self: this.self(context), lane: this.lane(context) };
    for await (const _ of pulses) yield { self: this.self(context), lane: this.lane(context) };
  }

  private lane(context: PadContext): PadLane | null {
    const { role, lane } = this.padOf(context);
    const { state } = this.book.get(context.night);
    const heat = state.heats[begunHeats(state) - 1];
    const place = heat?.lanes.find((item) => item.lane === lane);
    const set = role === 'judge' ? place?.set : role === 'shadow' ? place?.shadowSet : null;
    if (heat === undefined || heat.phase === 'planned' || set == null) return null;
    const { ledger } = this.parts;
    const setup = ledger.sets.get(set);
    return {
      heat: heat.number,
      heatPhase: heat.phase,
      goAt: heat.goAt,
      role: role === 'shadow' ? 'shadow' : 'main',
      setup,
      sheet: ledger.sheets.get(setup.sheet.id, setup.sheet.version),
      athlete: calledName(ledger.people.get(setup.athlete)),
      judge: calledName(ledger.people.get(setup.judge)),
    };
  }

  private padOf({ night, device }: PadContext): NightPad {
    const pad = this.book.get(night).state.pads.find((item) => item.device === device);
    if (pad === undefined) throw notAllowed('The desk has not given this pad a place yet. Wait for it.', 'no-place');
    if (pad.revoked) throw notAllowed('The desk has taken this pad out. Ask there.', 'revoked');
    return pad;
  }
}

/** Hands a stream on until the pad loses its place, be it in the middle. */
async function* whileAllowed<Item>(items: AsyncGenerator<Item>, allowed: () => boolean): AsyncGenerator<Item> {
  for await (const item of items) {
    if (!allowed()) throw notAllowed('This pad has another place now.', 'moved');
    yield item;
  }
}

function notAllowed(message: string, what: string): ORPCError<'NOT_ALLOWED', { what: string }> {
  return new ORPCError('NOT_ALLOWED', { status: 403, message, data: { what } });
}
