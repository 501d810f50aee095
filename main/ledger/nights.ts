import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { NightEvent } from '../../shared-types/night/events.ts';
import type { Night } from '../../shared-types/night/night.ts';
import { canonicalJson, checksum } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { build } from './query.ts';
import { checkedBody, damagedRow, type EventRow, eventChecksum, NIGHT_EVENT_COLUMNS } from './rows.ts';
import { createSet } from './sets.ts';

export interface NightReads {
  /** Errors: `unknown-night`, `damaged`. */
  get(id: string): Night;
  /** Latest day first. */
  list(): Night[];
  /** The log of a night in the order of recording. Errors: `unknown-night`, `damaged`. */
  events(night: string): NightEvent[];
  /** The night at which a set was judged; null where it was at none. */
  ofSet(set: string): { readonly night: string; readonly heat: number; readonly lane: string } | null;
}

export interface Nights extends NightReads {
  /**
   * Records a night with the first events of its log, in one transaction. `already` where the same night is there to the byte: its
   * log is then left alone. Errors: `conflict` where the id carries another night.
   */
  create(night: Night, events: readonly NightEvent[]): 'new' | 'already';
  /**
   * Appends events of one night, and records the setups of the sets that they link, in one transaction. Errors, with nothing
   * written: `unknown-night`, `conflict` (an event or a set of that name is there), `unknown-person`, `unknown-sheet`, `full`,
   * `disk`.
   */
  append(events: readonly NightEvent[], setups: readonly SetSetup[]): void;
}

export function nightReads(connection: ReadConnection): NightReads {
  return {
    get: (id) => {
      const row = connection.first(build.selectFrom('nights').select(['body', 'crc']).where('id', '=', id));
      if (row === undefined) throw unknownNight(id, connection.path);
      return JSON.parse(checkedBody(row, `The night ${id}`, connection.path));
    },
    list: () =>
      connection
        .all(build.selectFrom('nights').select(['id', 'body', 'crc']).orderBy('date', 'desc').orderBy('n', 'desc'))
        .map((row) => JSON.parse(checkedBody(row, `The night ${row.id}`, connection.path))),
    events: (night) => {
      const number = nightNumber(connection, night);
      return connection
        .prepare<[number], EventRow>(`SELECT ${NIGHT_EVENT_COLUMNS} FROM night_events WHERE night_n = ? ORDER BY n`)
        .all(number)
        .map((row) => asEvent(night, row, connection.path));
    },
    ofSet: (set) =>
      connection
        .prepare<[string], { night: string; heat: number; lane: string }>(
          `SELECT nights.id AS night, heat, lane FROM night_sets
           JOIN nights ON nights.n = night_n JOIN sets ON sets.n = set_n WHERE sets.id = ?`,
        )
        .get(set) ?? null,
  };
}

export function nightWrites(connection: WriteConnection, now: () => number): Nights {
  return {
    ...nightReads(connection),
    create: (night, events) =>
      connection.transaction(() => {
        const body = canonicalJson(night);
        const stored = connection.first(build.selectFrom('nights').select('body').where('id', '=', night.id));
        if (stored?.body === body) return 'already';
        if (stored !== undefined) {
          const message = `The night ${night.id} is already there and differs. Its name and day never change.`;
          throw new LedgerError('conflict', message);
        }
        const { id, date, createdAt } = night;
        connection.run(
          build.insertInto('nights').values({ id, date, created_at: createdAt, body, crc: checksum(body) }),
        );
        for (const event of events) writeEvent(connection, event, now());
        return 'new';
      }),
    append: (events, setups) =>
      connection.transaction(() => {
        for (const setup of setups) {
          if (createSet(connection, setup) === 'already') {
            throw new LedgerError('conflict', `The set ${setup.id} is already there.`);
          }
        }
        for (const event of events) writeEvent(connection, event, now());
      }),
  };
}

function writeEvent(connection: WriteConnection, event: NightEvent, recordedAt: number): void {
  const nightN = nightNumber(connection, event.night);
  const { night: _night, pad, seq, at, kind, ...rest } = event;
  const row = { set_n: nightN, pad, seq, at, kind, body: canonicalJson(rest) };
  const taken = connection
    .prepare<[number, string, number], { n: number }>(
      'SELECT n FROM night_events WHERE night_n = ? AND pad = ? AND seq = ?',
    )
    .get(nightN, pad, seq);
  if (taken !== undefined) throw new LedgerError('conflict', `The night already has an event ${seq} of ${pad}.`);
  const { set_n: _setN, ...columns } = row;
  const values = { night_n: nightN, ...columns, crc: eventChecksum(row), recorded_at: recordedAt };
  connection.run(build.insertInto('night_events').values(values));
  if (event.kind !== 'set') return;
  const set = connection.first(build.selectFrom('sets').select('n').where('id', '=', event.set));
  if (set === undefined)
    throw new LedgerError('unknown-set', `The database ${connection.path} has no set ${event.set}.`);
  const { heat, lane, role } = event;
  connection.run(build.insertInto('night_sets').values({ set_n: set.n, night_n: nightN, heat, lane, role }));
}

function nightNumber(connection: ReadConnection, night: string): number {
  const row = connection.prepare<[string], { n: number }>('SELECT n FROM nights WHERE id = ?').get(night);
  if (row === undefined) throw unknownNight(night, connection.path);
  return row.n;
}

/** The event that a row holds. Only events that the schema of nights has let in are ever written, so the type stands. */
function asEvent(night: string, row: EventRow, path: string): NightEvent {
  if (eventChecksum(row) !== row.crc) throw damagedRow(`Event ${row.seq} of ${row.pad}`, path);
  const { pad, seq, at, kind } = row;
  return { night, pad, seq, at, kind, ...JSON.parse(row.body) } as NightEvent;
}

function unknownNight(night: string, path: string): LedgerError {
  return new LedgerError('unknown-night', `The database ${path} has no night ${night}.`);
}
