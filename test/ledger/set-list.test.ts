import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { SetFilter } from '../../main/ledger/filter.ts';
import type { Ledger } from '../../main/ledger/ledger.ts';
import type { SetCursor, SetRow } from '../../main/ledger/set-list.ts';
import { figures, fill } from './big.ts';
import { call, freshLedger, furnish, go, id, openOk, setup, wholeLog } from './helpers.ts';

const SETS = 120;
let ledger: Ledger;
let all: SetRow[] = [];

beforeAll(async () => {
  const place = mkdtempSync(join(tmpdir(), 'plumbline-list-'));
  ledger = await openOk(join(place, 'plumbline.db'));
  fill(ledger, SETS, 10);
  ledger.people.change(id(3), { name: 'Ångström, Zoë', nickname: 'Ång' });
  ledger.sets.create(setup(900, { note: 'Before the RAIN came', tags: ['wet floor'], createdAt: 50 * 3_600_000 }));
  ledger.sets.create(setup(901, { role: 'shadow', loadKg: null, heightM: 3, createdAt: 9e12 }));
  all = pages({}, 500).flat();
  return () => {
    ledger.close();
    rmSync(place, { recursive: true, force: true });
  };
});

function pages(filter: SetFilter, limit: number): SetRow[][] {
  const found: SetRow[][] = [];
  let after: SetCursor | null | undefined;
  while (after !== null) {
    const page = ledger.sets.list({ filter, limit, ...(after === undefined ? {} : { after }) });
    found.push([...page.rows]);
    after = page.next;
  }
  return found;
}

describe('the list of sets', () => {
  test('has every set once, latest first, whatever the size of a page', () => {
    expect(all).toHaveLength(SETS + 2);
    expect(all.map((row) => row.happenedAt)).toEqual(all.map((row) => row.happenedAt).toSorted((a, b) => b - a));
    for (const limit of [1, 7, 61, 122, 123]) {
      const split = pages({}, limit);
      expect(split.flat()).toEqual(all);
      expect(split).toHaveLength(Math.ceil(122 / limit));
    }
    expect(ledger.sets.list({ limit: 3 }).total).toBe(122);
  });

  test('a row carries the setup, the names and the sums', () => {
    const row = all.find((item) => item.setup.id === setup(2).id);
    expect(row).toMatchObject({
      happenedAt: 2 * 3_600_000 + 5_000,
      athlete: { name: 'Ångström, Zoë', nickname: 'Ång' },
      judge: { name: 'Person 47' },
      station: 'step',
      facts: figures(2, 10).facts,
    });
    expect(row?.setup).toEqual(ledger.sets.get(setup(2).id));
  });

  const rowsWhere = (keep: (row: SetRow) => boolean) => all.filter(keep).map((row) => row.setup.id);
  const cases: [string, SetFilter, (row: SetRow) => boolean][] = [
    ['one athlete', { athletes: [id(3)] }, (row) => row.setup.athlete === id(3)],
    ['two judges', { judges: [id(41), id(44)] }, (row) => [id(41), id(44)].includes(row.setup.judge)],
    ['no athlete at all', { athletes: [] }, () => false],
    ['a sheet', { sheets: [{ id: 'carry' }] }, (row) => row.setup.sheet.id === 'carry'],
    ['a version that is not there', { sheets: [{ id: 'carry', version: 2 }] }, () => false],
    ['loads', { loadsKg: [6] }, (row) => row.setup.loadKg === 6],
    ['a load or none', { loadsKg: [9, null] }, (row) => row.setup.loadKg === 9 || row.setup.loadKg === null],
    ['a height', { heightsM: [3] }, (row) => row.setup.heightM === 3],
    ['after a run', { before: ['run'] }, (row) => row.setup.before === 'run'],
    ['a tag', { tags: ['tenth'] }, (row) => row.setup.tags.includes('tenth')],
    ['two tags', { tags: ['tenth', 'wet floor'] }, () => false],
    [
      'a span',
      { from: 40 * 3_600_000, to: 50 * 3_600_000 },
      (row) => row.happenedAt >= 144e6 && row.happenedAt < 180e6,
    ],
    ['not begun', { phases: ['ready'] }, (row) => row.facts.phase === 'ready'],
    ['shadows', { roles: ['shadow'] }, (row) => row.setup.role === 'shadow'],
    ['no practice', { practice: 'no' }, (row) => !row.setup.practice],
    ['only practice', { practice: 'only' }, (row) => row.setup.practice],
    ['unexplained', { unexplained: true }, (row) => row.facts.unexplained > 0],
    ['all explained', { unexplained: false }, (row) => row.facts.unexplained === 0],
    ['a name without its accents', { search: 'angstrom zoe' }, (row) => row.setup.athlete === id(3)],
    ['a nickname', { search: 'ÅNG' }, (row) => row.setup.athlete === id(3)],
    ['a word of the note and of the tag', { search: 'rain wet' }, (row) => row.setup.note !== ''],
    ['name and station', { search: 'step ång' }, (row) => row.setup.athlete === id(3) && row.station === 'step'],
    ['signs of the query language', { search: "%' OR 1=1 --" }, () => false],
    [
      'several at once',
      { athletes: [id(1)], practice: 'no', tags: ['tenth'] },
      (row) => row.setup.athlete === id(1) && !row.setup.practice && row.setup.tags.includes('tenth'),
    ],
  ];
  test.each(cases)('by %s', (_what, filter, keep) => {
    const found = pages(filter, 9)
      .flat()
      .map((row) => row.setup.id);
    expect(found).toEqual(rowsWhere(keep));
    expect(ledger.sets.list({ filter, limit: 1 }).total).toBe(found.length);
  });

  test('the cases above find something wherever they should', () => {
    const empty = cases.filter(([, , keep]) => rowsWhere(keep).length === 0).map(([what]) => what);
    expect(empty).toEqual([
      'no athlete at all',
      'a version that is not there',
      'two tags',
      'signs of the query language',
    ]);
  });
});

describe('unfinished sets', () => {
  test('are those that have begun and whose facts do not say that they ended with their last event', async () => {
    const own = await freshLedger();
    furnish(own);
    for (const number of [2, 3, 4]) own.sets.create(setup(number));
    expect(own.sets.unfinished()).toEqual([]);
    const log = wholeLog(setup(2).id, 12, 'pad-2');
    own.log.append([go(setup(3).id, { pad: 'pad-3' })]);
    own.log.append(log);
    own.facts.write(setup(2).id, { ...figures(2, 10), appliedN: own.log.lastN(), projection: 1 });
    expect(own.sets.unfinished().map((item) => item.setup)).toEqual([setup(3)]);
    // A slip withdraws the finish: the facts are old, and the set may be running again.
    own.log.append([
      { set: setup(2).id, pad: 'pad-2', seq: 13, at: 50_000, kind: 'slip', of: { pad: 'pad-2', seq: 12 } },
    ]);
    expect(own.sets.unfinished().map((item) => item.setup.id)).toEqual([setup(2).id, setup(3).id]);
    own.log.append([call(setup(3).id, 2, { pad: 'pad-3' })]);
    expect(own.sets.unfinished().map((item) => item.setup.id)).toEqual([setup(3).id, setup(2).id]);
  });
});
