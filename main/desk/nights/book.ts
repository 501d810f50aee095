import { randomUUID } from 'node:crypto';
import { ORPCError } from '@orpc/server';
import type { SetSetup } from '../../../shared-types/log/setup.ts';
import type { NightEntry, NightEvent } from '../../../shared-types/night/events.ts';
import { foldNight } from '../../../shared-types/night/fold.ts';
import type { Arrangement, Assignment, Night } from '../../../shared-types/night/night.ts';
import type { NightState } from '../../../shared-types/night/state.ts';
import type { DeskParts } from '../calls.ts';

/** A night as it stands: its log and what the log says. */
export interface OpenNight {
  readonly night: Night;
  readonly events: readonly NightEvent[];
  readonly state: NightState;
}

/** Under this name the desk writes the logs of nights. */
const DESK = 'desk';

/** Reads and writes nights. The desk is their only writer, so what it has read once stays true until it writes. */
export class NightBook {
  private readonly known = new Map<string, OpenNight>();
  private readonly parts: Pick<DeskParts, 'ledger' | 'changes' | 'now'>;

  constructor(parts: Pick<DeskParts, 'ledger' | 'changes' | 'now'>) {
    this.parts = parts;
  }

  /** Errors: `unknown-night`, `damaged`. */
  get(id: string): OpenNight {
    const known = this.known.get(id);
    if (known !== undefined) return known;
    const { nights } = this.parts.ledger;
    return this.keep(nights.get(id), nights.events(id));
  }

  create(night: Night, arrangement: Arrangement): 'new' | 'already' {
    this.mustHave(arrangement);
    const first: NightEvent = { ...this.base(night.id, 1), kind: 'arrange', arrangement };
    const outcome = this.parts.ledger.nights.create(night, [first]);
    if (outcome === 'new') this.parts.changes.changed('nights', night.id);
    return outcome;
  }

  /** Writes one event and what follows from it. Refuses (NOT_ALLOWED) what could have no effect. */
  append(id: string, entry: NightEntry): NightEvent[] {
    if (entry.kind === 'arrange') this.mustHave(entry.arrangement);
    const { events, state } = this.get(id);
    const event: NightEvent = { ...this.base(id, nextSeq(events)), ...entry };
    const setups: SetSetup[] = [];
    const links: NightEvent[] = [];
    if (entry.kind === 'heat-open' && state.arrangement !== null) {
      for (const lane of state.heats[entry.heat - 1]?.lanes ?? []) {
        for (const role of lane.shadow === null ? (['main'] as const) : (['main', 'shadow'] as const)) {
          const setup = setupFor(state.arrangement, lane, role, this.parts.now());
          setups.push(setup);
          const place = { heat: entry.heat, lane: lane.lane, role, set: setup.id };
          links.push({ ...this.base(id, event.seq + setups.length), kind: 'set', ...place });
        }
      }
    }
    return this.write(id, [event, ...links], setups);
  }

  /** How a pad's clock stood when it judged a set. */
  aligned(id: string, device: string, reading: { set: string; offsetMs: number; uncertaintyMs: number }): void {
    const { events } = this.get(id);
    this.write(id, [{ ...this.base(id, nextSeq(events)), kind: 'aligned', device, ...reading }], []);
  }

  private write(id: string, events: NightEvent[], setups: readonly SetSetup[]): NightEvent[] {
    const before = this.get(id);
    const clashes = foldNight(id, [...before.events, ...events]).clashes.slice(before.state.clashes.length);
    const [clash] = clashes;
    if (clash !== undefined) {
      const { message, kind } = clash;
      throw new ORPCError('NOT_ALLOWED', { status: 403, message, data: { what: kind } });
    }
    this.parts.ledger.nights.append(events, setups);
    this.keep(before.night, [...before.events, ...events]);
    if (setups.length > 0) this.parts.changes.changed('sets', null);
    this.parts.changes.nightAppended(id, events);
    return events;
  }

  private keep(night: Night, events: readonly NightEvent[]): OpenNight {
    const open = { night, events, state: foldNight(night.id, events) };
    this.known.set(night.id, open);
    return open;
  }

  /** Errors: `unknown-person`, `unknown-sheet` where the arrangement names what the desk does not have. */
  private mustHave({ people, stations }: Arrangement): void {
    for (const { id } of people) this.parts.ledger.people.get(id);
    for (const { sheet } of stations) this.parts.ledger.sheets.get(sheet.id, sheet.version);
  }

  private base(night: string, seq: number) {
    return { night, pad: DESK, seq, at: this.parts.now() };
  }
}

function nextSeq(events: readonly NightEvent[]): number {
  return events.reduce((last, { seq }) => Math.max(last, seq), 0) + 1;
}

function setupFor(given: Arrangement, lane: Assignment, role: 'main' | 'shadow', createdAt: number): SetSetup {
  const station = given.stations.find(({ id }) => id === lane.station);
  if (station === undefined) throw new Error(`a plan names stations of the night only, not ${lane.station}`);
  const own = given.people.find(({ id }) => id === lane.athlete)?.own[lane.station];
  return {
    id: randomUUID(),
    athlete: lane.athlete,
    judge: role === 'main' ? lane.judge : (lane.shadow ?? lane.judge),
    sheet: station.sheet,
    goal: station.goal,
    loadKg: own?.loadKg ?? station.loadKg,
    heightM: own?.heightM ?? station.heightM,
    before: station.before,
    tags: [],
    note: '',
    role,
    practice: false,
    createdAt,
  };
}
