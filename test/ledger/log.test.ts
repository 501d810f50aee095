import Database from 'better-sqlite3';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openWriter } from '../../main/ledger/connection.ts';
import { setEvent } from '../../shared-types/log/events.ts';
import { call, folder, freshLedger, furnish, go, id, openOk, refusal, setup, wholeLog } from './helpers.ts';

describe('appending', () => {
  test('an event is new once and already there ever after, whatever the order of its fields', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    const event = call(set, 2, { verdict: 'no-rep', faults: ['knee', 'tall'] });
    const turned = Object.fromEntries(Object.entries(event).reverse()) as typeof event;
    expect(ledger.log.append([go(set), event])).toEqual([
      { outcome: 'new', n: 1 },
      { outcome: 'new', n: 2 },
    ]);
    expect(ledger.log.append([turned, call(set, 3), call(set, 3)])).toEqual([
      { outcome: 'already', n: 2 },
      { outcome: 'new', n: 3 },
      { outcome: 'already', n: 3 },
    ]);
    expect(ledger.log.events(set)).toEqual([go(set), event, call(set, 3)]);
  });

  test('the same name with other contents is a conflict: nothing of it is written, the rest of the batch is', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    ledger.sets.create(setup(2));
    ledger.log.append([go(set), call(set, 2)]);
    const others = [
      call(set, 2, { at: 4_001 }),
      call(set, 2, { verdict: 'caution' }),
      call(setup(2).id, 2),
      { ...go(set), seq: 2 },
    ];
    for (const other of others) {
      expect(ledger.log.append([other])).toEqual([{ outcome: 'conflict', kept: call(set, 2) }]);
    }
    expect(ledger.log.append([call(set, 2, { at: 9 }), call(set, 3)]).map((item) => item.outcome)).toEqual([
      'conflict',
      'new',
    ]);
    expect(ledger.log.events(set)).toEqual([go(set), call(set, 2), call(set, 3)]);
  });

  test('an unknown set refuses the whole batch', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    const told = await refusal(() => ledger.log.append([go(set), call(id(9), 2)]));
    expect(told.code).toBe('unknown-set');
    expect(told.message).toContain(id(9));
    expect(ledger.log.events(set)).toEqual([]);
    expect((await refusal(() => ledger.log.events(id(9)))).code).toBe('unknown-set');
  });

  test('a pad whose name is no text is refused', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    expect((await refusal(() => ledger.log.append([{ ...go(set), pad: 'a\ud800' }]))).code).toBe('bad-text');
    expect(ledger.log.lastN()).toBe(0);
  });

  test('reading on from a place, and the last number of a pad', async () => {
    const ledger = await freshLedger({ now: () => 777 });
    const { id: set } = furnish(ledger);
    ledger.log.append(wholeLog(set, 30));
    ledger.log.append([call(set, 7, { pad: 'pad-b' })]);
    expect(ledger.log.after(29, 10).map(({ n, recordedAt, event }) => [n, recordedAt, event.pad, event.seq])).toEqual([
      [30, 777, 'pad-a', 30],
      [31, 777, 'pad-b', 7],
    ]);
    expect(ledger.log.after(3, 2)).toHaveLength(2);
    expect(['pad-a', 'pad-b', 'pad-c'].map((pad) => ledger.log.lastSeq(pad))).toEqual([30, 7, 0]);
    expect(ledger.log.lastN()).toBe(31);
  });

  test('whatever the schema of the log lets in is read back to the byte', async () => {
    const ledger = await freshLedger();
    const { id: set } = furnish(ledger);
    let seq = 0;
    const text = fc.string({ unit: 'binary', maxLength: 60 });
    const at = fc.integer({ min: 0, max: 315_576_000_000 });
    fc.assert(
      fc.property(at, text, fc.double({ min: 0, max: 100_000, noNaN: true }), (time, reason, metres) => {
        const base = { set, pad: 'pad-ü#1', at: time };
        const events = [
          { ...base, seq: seq + 1, kind: 'abandon', reason },
          { ...base, seq: seq + 2, kind: 'mark', metres },
          { ...base, seq: seq + 3, kind: 'appeal', of: { pad: 'p', seq: 1 }, reason, by: null, outcome: 'open' },
        ].map((event) => setEvent.parse(event));
        const from = ledger.log.lastN();
        seq += 3;
        expect(ledger.log.append(events).every((item) => item.outcome === 'new')).toBe(true);
        expect(ledger.log.append(events).every((item) => item.outcome === 'already')).toBe(true);
        expect(JSON.stringify(ledger.log.after(from, 9).map((item) => sorted(item.event)))).toBe(
          JSON.stringify(events.map(sorted)),
        );
      }),
      { numRuns: 60 },
    );
  });
});

function sorted(event: object): unknown {
  return Object.fromEntries(Object.entries(event).sort(([a], [b]) => (a < b ? -1 : 1)));
}

describe('what is recorded stays', () => {
  test.each(['events', 'sets', 'set_tags', 'sheets'])('%s: no update, delete or replacement', async (table) => {
    const path = `${folder()}/plumbline.db`;
    const ledger = await openOk(path);
    const { id: set } = furnish(ledger);
    ledger.sets.create(setup(2, { tags: ['heat'] }));
    ledger.log.append([go(set)]);
    ledger.close();
    const connection = openWriter(path);
    const column = table === 'set_tags' ? 'tag' : 'body';
    const run = (sql: string) => connection.prepare(sql).run();
    expect(() => run(`UPDATE ${table} SET ${column} = ${column}`)).toThrow(/never changes/);
    expect(() => run(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    expect(() => run(`INSERT OR REPLACE INTO ${table} SELECT * FROM ${table}`)).toThrow(/never deleted/);
    connection.close();
  });

  test('a changed byte in a log is told, not read as a call', async () => {
    const path = `${folder()}/plumbline.db`;
    const first = await openOk(path);
    const { id: set } = furnish(first);
    first.log.append(wholeLog(set, 10));
    first.close();
    const database = new Database(path);
    database.exec(`DROP TRIGGER events_stay; UPDATE events SET body = replace(body, 'no-rep', 'counted') WHERE n = 5`);
    database.close();
    const ledger = await openOk(path);
    const told = await refusal(() => ledger.log.events(set));
    expect(told.code).toBe('damaged');
    expect(told.message).toContain('Event 5 of pad pad-a');
    expect((await refusal(() => ledger.copies.take())).code).toBe('damaged');
    ledger.close();
  });
});
