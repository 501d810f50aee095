import { type EventRef, refKey, type SetEvent, sameEvent } from './events.ts';

/** An event whose key another event already carries with other contents: kept out, and told. */
export interface Conflict {
  readonly kept: SetEvent;
  readonly refused: SetEvent;
}

export interface Ordered {
  /** Each event once, in the order in which the set is read. */
  readonly events: readonly SetEvent[];
  readonly byKey: ReadonlyMap<string, SetEvent>;
  readonly conflicts: readonly Conflict[];
}

interface Place {
  readonly at: number;
  readonly depth: number;
}

/**
 * The one order of a log, whatever order its events arrived in (rules 2 to 4): by time; within a pad by its running
 * number, even where its clock stepped back; and an event never before the one that it speaks of.
 */
export function orderEvents(log: readonly SetEvent[]): Ordered {
  const byKey = new Map<string, SetEvent>();
  const conflicts: Conflict[] = [];
  for (const event of log) {
    const key = refKey(event);
    const kept = byKey.get(key);
    if (kept === undefined) byKey.set(key, event);
    else if (kept !== event && !sameEvent(kept, event)) conflicts.push({ kept, refused: event });
  }
  const events = [...byKey.values()].sort(byTime);
  const places = placesOf(events, byKey);
  const placed = events.map((event) => ({ event, place: places.get(refKey(event)) ?? { at: event.at, depth: 0 } }));
  placed.sort(
    (one, other) =>
      one.place.at - other.place.at || one.place.depth - other.place.depth || byTime(one.event, other.event),
  );
  return { events: placed.map((item) => item.event), byKey, conflicts };
}

/** Go comes first among events of one instant, then the pad's name and number decide. */
function byTime(one: SetEvent, other: SetEvent): number {
  return (
    one.at - other.at ||
    Number(other.kind === 'go') - Number(one.kind === 'go') ||
    (one.pad < other.pad ? -1 : one.pad > other.pad ? 1 : one.seq - other.seq)
  );
}

/** The time and depth at which each event is read: not before its pad's previous event, nor before its target. */
function placesOf(events: readonly SetEvent[], byKey: ReadonlyMap<string, SetEvent>): Map<string, Place> {
  const previous = previousOfPad(events);
  const places = new Map<string, Place>();
  for (const first of events) {
    // A stack of its own instead of recursion: a log of thousands of events must not exhaust the call stack.
    const stack: SetEvent[] = [first];
    const waiting = new Set<string>();
    for (let event = stack.at(-1); event !== undefined; event = stack.at(-1)) {
      const key = refKey(event);
      if (places.has(key)) {
        stack.pop();
        continue;
      }
      const before = [previous.get(key), targetOf(event, byKey)].filter((item) => item !== undefined);
      // An event already waiting below closes a circle of references; it is read by its own time.
      const missing = waiting.has(key)
        ? []
        : before.filter((item) => !places.has(refKey(item)) && !waiting.has(refKey(item)));
      waiting.add(key);
      if (missing.length > 0) {
        stack.push(...missing);
        continue;
      }
      places.set(key, placeAfter(event, before, places));
      stack.pop();
    }
  }
  return places;
}

function placeAfter(event: SetEvent, before: readonly SetEvent[], places: ReadonlyMap<string, Place>): Place {
  let at = event.at;
  let depth = 0;
  for (const item of before) {
    const place = places.get(refKey(item));
    if (place === undefined || place.at < at) continue;
    depth = place.at > at ? place.depth + 1 : Math.max(depth, place.depth + 1);
    at = place.at;
  }
  return { at, depth };
}

function previousOfPad(events: readonly SetEvent[]): Map<string, SetEvent> {
  const pads = new Map<string, SetEvent[]>();
  for (const event of events) {
    const own = pads.get(event.pad);
    if (own === undefined) pads.set(event.pad, [event]);
    else own.push(event);
  }
  const previous = new Map<string, SetEvent>();
  for (const own of pads.values()) {
    own.sort((one, other) => one.seq - other.seq);
    own.forEach((event, index) => {
      const earlier = own[index - 1];
      if (earlier !== undefined) previous.set(refKey(event), earlier);
    });
  }
  return previous;
}

function targetOf(event: SetEvent, byKey: ReadonlyMap<string, SetEvent>): SetEvent | undefined {
  const of: EventRef | undefined = 'of' in event ? event.of : undefined;
  return of === undefined ? undefined : byKey.get(refKey(of));
}
