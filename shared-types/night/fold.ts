import { type EventRef, refKey } from '../log/events.ts';
import type { NightEvent, NightEventOf } from './events.ts';
import type { Assignment, NightPlan } from './night.ts';
import type { Heat, HeatLane, NightClash, NightClashKind, NightPad, NightState, Presence } from './state.ts';

/**
 * Reads the log of a night: the one function from events to its state. Total: any list of well-formed events gives a state;
 * what cannot follow is told under `clashes`. Events count once by `(pad, seq)` and are read in the order of the list, which
 * is that of recording. A heat that has begun (opened) keeps its lanes whatever plan comes later.
 */
export function foldNight(nightId: string, log: readonly NightEvent[]): NightState {
  const reader = new Reader(nightId);
  for (const event of log) reader.read(event);
  return reader.state();
}

/** The plan as it stands, heat by heat. */
export function planOf(state: Pick<NightState, 'heats'>): NightPlan {
  return state.heats.map(({ lanes }) =>
    lanes.map(({ lane, station, athlete, judge, shadow }) => ({ lane, station, athlete, judge, shadow })),
  );
}

/** Heats that have begun: they come first and are never planned again. */
export function begunHeats(state: Pick<NightState, 'heats'>): number {
  return state.heats.reduce((last, heat) => (heat.phase === 'planned' ? last : heat.number), 0);
}

class Reader {
  private readonly seen = new Map<string, string>();
  private readonly presence = new Map<string, Presence>();
  private readonly pads = new Map<string, NightPad>();
  private readonly clocks = new Map<string, { offsetMs: number; uncertaintyMs: number }>();
  private readonly appeals: NightEventOf<'appeal'>[] = [];
  private readonly clashes: NightClash[] = [];
  private readonly id: string;
  private phase: NightState['phase'] = 'planned';
  private arrangement: NightState['arrangement'] = null;
  private heats: Heat[] = [];

  constructor(id: string) {
    this.id = id;
  }

  read(event: NightEvent): void {
    if (event.night !== this.id) return this.note('wrong-night', event, 'it belongs to another night');
    const text = canonical(event);
    const kept = this.seen.get(refKey(event));
    if (kept !== undefined) {
      if (kept !== text) this.note('changed-event', event, 'an event with this name is already there, and differs');
      return;
    }
    this.seen.set(refKey(event), text);
    this.apply(event);
  }

  private apply(event: NightEvent): void {
    switch (event.kind) {
      case 'arrange':
        return this.arrange(event);
      case 'plan':
        return this.plan(event);
      case 'presence':
        if (!this.knows(event.person)) return this.note('no-such-person', event, 'the person is not in this night');
        this.presence.set(event.person, { state: event.state, at: event.at });
        return;
      case 'pad':
        return this.pad(event);
      case 'revoke': {
        const pad = this.pads.get(event.device);
        if (pad === undefined) return this.note('no-such-device', event, 'the device has no role in this night');
        this.pads.set(event.device, { ...pad, revoked: true });
        return;
      }
      case 'open':
        if (this.arrangement === null) return this.note('not-arranged', event, 'the night has not been arranged');
        if (this.phase === 'open') return this.note('already-open', event, 'the night is open already');
        this.phase = 'open';
        return;
      case 'close':
        if (this.phase !== 'open') return this.note('not-open', event, 'the night is not open');
        this.phase = 'closed';
        return;
      case 'appeal':
      case 'aligned':
        if (!this.hasSet(event.set)) return this.note('no-such-set', event, 'the set is not part of this night');
        if (event.kind === 'appeal') this.appeals.push(event);
        else this.clocks.set(event.set, { offsetMs: event.offsetMs, uncertaintyMs: event.uncertaintyMs });
        return;
      default:
        return this.heatEvent(event);
    }
  }

  private arrange(event: NightEventOf<'arrange'>): void {
    const { lanes, stations, people } = event.arrangement;
    const known = new Set([...lanes, ...stations, ...people].map(({ id }) => id));
    const lost = this.heats
      .filter(({ phase }) => phase !== 'planned')
      .flatMap((heat) => heat.lanes)
      .some((lane) => namesOf(lane).some((name) => !known.has(name)));
    if (lost) return this.note('begun-changed', event, 'a heat that has begun needs what it leaves out');
    this.arrangement = event.arrangement;
  }

  private plan(event: NightEventOf<'plan'>): void {
    if (this.arrangement === null) return this.note('not-arranged', event, 'the night has not been arranged');
    const begun = this.heats.slice(0, begunHeats({ heats: this.heats }));
    const kept = planOf({ heats: begun });
    if (canonical(kept) !== canonical(event.heats.slice(0, begun.length))) {
      return this.note('begun-changed', event, 'it changes a heat that has begun');
    }
    const later = event.heats.slice(begun.length).map(
      (lanes, index): Heat => ({
        number: begun.length + index + 1,
        phase: 'planned',
        openedAt: null,
        goAt: null,
        closedAt: null,
        lanes: lanes.map((lane) => ({ ...lane, set: null, shadowSet: null })),
      }),
    );
    this.heats = [...begun, ...later];
  }

  private pad(event: NightEventOf<'pad'>): void {
    const { device, name, role, lane } = event;
    if (lane !== null && this.arrangement?.lanes.every(({ id }) => id !== lane) !== false) {
      return this.note('no-such-lane', event, 'the night has no such lane');
    }
    this.pads.set(device, { device, name, role, lane, revoked: false });
  }

  private heatEvent(event: NightEventOf<'heat-open' | 'heat-go' | 'heat-close' | 'set'>): void {
    const heat = this.heats[event.heat - 1];
    if (heat === undefined) return this.note('no-such-heat', event, 'the plan has no such heat');
    if (this.phase !== 'open' && event.kind !== 'heat-close') {
      return this.note('not-open', event, 'the night is not open');
    }
    switch (event.kind) {
      case 'heat-open':
        if (heat.phase !== 'planned') return this.note('out-of-order', event, 'the heat has been opened already');
        if (begunHeats({ heats: this.heats }) !== heat.number - 1) {
          return this.note('out-of-order', event, 'an earlier heat has not been opened');
        }
        return this.put({ ...heat, phase: 'open', openedAt: event.at });
      case 'heat-go':
        if (heat.phase !== 'open') return this.note('out-of-order', event, `the heat is ${heat.phase}`);
        return this.put({ ...heat, phase: 'running', goAt: event.at });
      case 'heat-close':
        if (heat.phase !== 'open' && heat.phase !== 'running') {
          return this.note('out-of-order', event, `the heat is ${heat.phase}`);
        }
        return this.put({ ...heat, phase: 'closed', closedAt: event.at });
      case 'set':
        return this.link(event, heat);
    }
  }

  private link(event: NightEventOf<'set'>, heat: Heat): void {
    if (heat.phase === 'planned') return this.note('out-of-order', event, 'the heat has not been opened');
    const lane = heat.lanes.find((item) => item.lane === event.lane);
    if (lane === undefined) return this.note('no-such-lane', event, 'nobody is on this lane in this heat');
    const field = event.role === 'main' ? 'set' : 'shadowSet';
    if (lane[field] !== null && lane[field] !== event.set) {
      return this.note('set-there-already', event, 'another set is judged on this lane in this heat');
    }
    const lanes = heat.lanes.map((item): HeatLane => (item === lane ? { ...item, [field]: event.set } : item));
    this.put({ ...heat, lanes });
  }

  private put(heat: Heat): void {
    this.heats[heat.number - 1] = heat;
  }

  private hasSet(set: string): boolean {
    return this.heats.some(({ lanes }) => lanes.some((lane) => lane.set === set || lane.shadowSet === set));
  }

  private knows(person: string): boolean {
    return this.arrangement?.people.some(({ id }) => id === person) === true;
  }

  private note(kind: NightClashKind, event: NightEvent, why: string): void {
    const message = `The ${event.kind} has no effect: ${why}.`;
    this.clashes.push({ kind, event: refOf(event), eventKind: event.kind, message });
  }

  state(): NightState {
    const { phase, arrangement, heats, presence, clocks, appeals, clashes } = this;
    return { phase, arrangement, heats, presence, pads: [...this.pads.values()], clocks, appeals, clashes };
  }
}

function namesOf({ lane, station, athlete, judge, shadow }: Assignment): string[] {
  return [lane, station, athlete, judge, ...(shadow === null ? [] : [shadow])];
}

function refOf({ pad, seq }: EventRef): EventRef {
  return { pad, seq };
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
