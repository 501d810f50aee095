import { describe, expect, test } from 'vitest';
import { freshLedger, furnish, id, person, refusal, setup, sheet } from './helpers.ts';

describe('people', () => {
  test('are created once, changed, archived and restored', async () => {
    const { people } = await freshLedger();
    expect([people.create(person(1)), people.create(person(1))]).toEqual(['new', 'already']);
    expect((await refusal(() => people.create(person(1, { name: 'Other' })))).code).toBe('conflict');
    expect(people.change(id(1), { nickname: 'One', judge: false })).toEqual(
      person(1, { nickname: 'One', judge: false }),
    );
    expect(people.archive(id(1), 42).archivedAt).toBe(42);
    expect(people.list()).toEqual([]);
    expect(people.list({ archived: 'only' })).toHaveLength(1);
    expect(people.restore(id(1))).toEqual(people.get(id(1)));
    expect((await refusal(() => people.archive(id(7), 1))).code).toBe('unknown-person');
  });

  test('are found by every word of name or nickname, without accents or case', async () => {
    const ledger = await freshLedger();
    furnish(ledger);
    ledger.people.create(person(3, { name: "O'Neil 100% _x", athlete: false }));
    const found = (search: string) => ledger.people.list({ search }).map((row) => row.id);
    expect(found('ZOE mar')).toEqual([id(2)]);
    expect(found('addie lind')).toEqual([id(1)]);
    expect(found('100%')).toEqual([id(3)]);
    expect(found("' OR 1=1 --")).toEqual([]);
    expect(ledger.people.list({ role: 'athlete' }).map((row) => [row.id, row.setsAsAthlete, row.setsAsJudge])).toEqual([
      [id(1), 1, 0],
      [id(2), 0, 1],
    ]);
  });

  test('a name with half a surrogate pair is kept as text and is the same person again', async () => {
    const { people } = await freshLedger();
    const odd = person(1, { name: 'a\ud800', notes: '\0<b>\u202e' });
    expect([people.create(odd), people.create(odd)]).toEqual(['new', 'already']);
    expect(people.get(id(1))).toEqual({ ...odd, name: 'a\ufffd' });
  });
});

describe('standard sheets', () => {
  test('only the next version can be published', async () => {
    const { sheets } = await freshLedger();
    expect((await refusal(() => sheets.publish(sheet({ version: 2 })))).code).toBe('version-not-next');
    expect([sheets.publish(sheet()), sheets.publish(sheet())]).toEqual(['new', 'already']);
    const told = await refusal(() => sheets.publish(sheet({ station: 'Changed' })));
    expect(told).toEqual({ code: 'version-not-next', message: expect.stringContaining('is 2, not 1') });
    sheets.publish(sheet({ version: 2, station: 'Long lunge' }));
    sheets.publish(sheet({ id: 'carry', station: 'Carry' }));
    expect(sheets.latest().map((item) => [item.id, item.version])).toEqual([
      ['carry', 1],
      ['lunge', 2],
    ]);
    expect(sheets.versions('lunge')).toEqual([sheet(), sheet({ version: 2, station: 'Long lunge' })]);
    expect(sheets.get('lunge', 1)).toEqual(sheet());
    expect((await refusal(() => sheets.get('lunge', 3))).code).toBe('unknown-sheet');
  });

  test('seeding twice changes nothing and leaves what the gym has made', async () => {
    const { sheets } = await freshLedger();
    const shipped = [sheet({ shipped: true }), sheet({ id: 'carry', station: 'Carry', version: 3, shipped: true })];
    expect(sheets.seed(shipped)).toEqual(['new', 'new']);
    expect(sheets.seed(shipped)).toEqual(['already', 'already']);
    sheets.publish(sheet({ version: 2, station: 'Ours' }));
    expect(sheets.seed([sheet({ version: 2, shipped: true }), sheet({ id: 'carry', version: 2 })])).toEqual([
      'kept',
      'kept',
    ]);
    expect(sheets.get('lunge', 2).station).toBe('Ours');
  });
});

describe('settings', () => {
  test('keep the last JSON value of a key', async () => {
    const { settings } = await freshLedger();
    expect(settings.get('theme')).toBeUndefined();
    settings.put('theme', { hall: true });
    settings.put('theme', null);
    settings.put('keys', [1, 'a']);
    expect([settings.get('theme'), settings.get('keys')]).toEqual([null, [1, 'a']]);
  });
});

describe('the setup of a set', () => {
  test('is recorded once and never changed', async () => {
    const { sets, ...ledger } = await freshLedger();
    const first = furnish({ sets, ...ledger });
    expect(sets.get(first.id)).toEqual(first);
    expect(sets.create(first)).toBe('already');
    expect((await refusal(() => sets.create({ ...first, loadKg: 20 }))).code).toBe('conflict');
    expect([sets.has(first.id), sets.has(id(9))]).toEqual([true, false]);
  });

  test('needs people and a sheet that are there; nothing of it is left behind otherwise', async () => {
    const { sets, ...ledger } = await freshLedger();
    furnish({ sets, ...ledger });
    const wanting = [
      setup(2, { athlete: id(8) }),
      setup(2, { judge: id(8) }),
      setup(2, { sheet: { id: 'lunge', version: 2 } }),
    ];
    const codes = await Promise.all(wanting.map(async (item) => (await refusal(() => sets.create(item))).code));
    expect(codes).toEqual(['unknown-person', 'unknown-person', 'unknown-sheet']);
    expect(sets.create(setup(2, { tags: ['a', 'a', 'b'] }))).toBe('new');
    expect(sets.tags()).toEqual([
      { tag: 'a', sets: 1 },
      { tag: 'b', sets: 1 },
    ]);
  });
});
