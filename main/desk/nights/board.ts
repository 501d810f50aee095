import type { Board, BoardChange, BoardLane } from '../../../shared-types/contract/nights/board.ts';
import { foldSet, tally } from '../../../shared-types/log/fold.ts';
import { begunHeats } from '../../../shared-types/night/fold.ts';
import type { Heat, HeatLane } from '../../../shared-types/night/state.ts';
import { calledName } from '../../../shared-types/people.ts';
import type { DeskParts } from '../calls.ts';
import type { NightBook } from './book.ts';

type BoardParts = Pick<DeskParts, 'ledger' | 'changes' | 'now'>;

/** The board of a night: whole at first and when the heat or plan changes, a lane whenever its set's log grows. */
export async function* watchBoard(
  parts: BoardParts,
  book: NightBook,
  night: string,
  signal: AbortSignal | undefined,
): AsyncGenerator<BoardChange> {
  // Listening begins before reading, so that nothing falls in between.
  const pulses = parts.changes.pulses(signal);
  yield { kind: 'whole', board: boardOf(parts, book, night) };
  for await (const pulse of pulses) {
    if (pulse.of === 'night') {
      if (pulse.id === night) yield { kind: 'whole', board: boardOf(parts, book, night) };
      continue;
    }
    const lane = shownHeat(book, night)?.lanes.find(({ set }) => set === pulse.id);
    if (lane !== undefined) yield { kind: 'lane', lane: laneOf(parts, book, night, lane.lane), now: parts.now() };
  }
}

function boardOf(parts: BoardParts, book: NightBook, night: string): Board {
  const { night: named, state } = book.get(night);
  const heat = shownHeat(book, night);
  const next = state.heats[begunHeats(state)];
  return {
    night: { id: named.id, name: named.name },
    phase: state.phase,
    heat: heat === undefined ? null : { number: heat.number, phase: heat.phase, goAt: heat.goAt },
    next: (next?.lanes ?? []).map(({ lane, athlete }) => ({ lane, athlete: nameOf(parts, athlete) })),
    lanes: (state.arrangement?.lanes ?? []).map(({ id }) => laneOf(parts, book, night, id)),
    now: parts.now(),
  };
}

function shownHeat(book: NightBook, night: string): Heat | undefined {
  const { state } = book.get(night);
  return state.heats[begunHeats(state) - 1];
}

function laneOf(parts: BoardParts, book: NightBook, night: string, id: string): BoardLane {
  const { arrangement } = book.get(night).state;
  const name = arrangement?.lanes.find((lane) => lane.id === id)?.name ?? id;
  const place = shownHeat(book, night)?.lanes.find(({ lane }) => lane === id);
  const base = { lane: { id, name }, goal: null, phase: 'ready', startedAt: null, endedMs: null } as const;
  const none = { counted: 0, noReps: 0, unexplained: 0, metres: 0, lastReason: null, openAppeals: 0 };
  if (place === undefined) return { ...base, ...none, athlete: null, station: '' };
  return { ...base, ...none, ...countsOf(parts, place), athlete: nameOf(parts, place.athlete) };
}

function countsOf({ ledger }: BoardParts, { set, station }: HeatLane) {
  if (set === null) return { station };
  const setup = ledger.sets.get(set);
  const sheet = ledger.sheets.get(setup.sheet.id, setup.sheet.version);
  const state = foldSet(set, ledger.log.events(set));
  const { counted, noReps, unexplained, metres } = tally(state);
  const last = state.attempts.findLast(({ verdict, withdrawn }) => verdict === 'no-rep' && !withdrawn);
  const code = last?.faults[0] ?? '';
  const fault = sheet.faults.find((item) => item.code === code);
  return {
    station: sheet.station,
    goal: setup.goal,
    phase: state.phase,
    startedAt: state.startedAt,
    endedMs: state.endedAt,
    counted,
    noReps,
    unexplained,
    metres,
    lastReason: last === undefined ? null : { code, name: fault?.name ?? code, initial: fault?.initial ?? '?' },
    openAppeals: state.appeals.filter(({ outcome }) => outcome === 'open').length,
  };
}

function nameOf({ ledger }: BoardParts, person: string): string {
  return calledName(ledger.people.get(person));
}
