import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { type AttemptFact, binOf, type SetFacts, scales } from '../../main/ledger/facts.ts';
import type { SetFilter } from '../../main/ledger/filter.ts';
import type { Ledger, LedgerReader } from '../../main/ledger/ledger.ts';
import { openReader } from '../../main/ledger/open.ts';
import { figures, fill } from './big.ts';
import { freshLedger, furnish, go, id, openOk, refusal, setup, wholeLog } from './helpers.ts';

const SETS = 150;
const ATTEMPTS = 12;
let ledger: Ledger;
let reader: LedgerReader;

beforeAll(async () => {
  const place = mkdtempSync(join(tmpdir(), 'plumbline-reports-'));
  ledger = await openOk(join(place, 'plumbline.db'));
  fill(ledger, SETS, ATTEMPTS);
  reader = openReader(ledger.path);
  return () => {
    reader.close();
    ledger.close();
    rmSync(place, { recursive: true, force: true });
  };
});

/** The sets that a filter should choose, from the numbers that `fill` counts by, with what it wrote for each. */
function written(keep: (number: number) => boolean) {
  const numbers = Array.from({ length: SETS }, (_, number) => number).filter((number) => number % 50 !== 0);
  return numbers.filter(keep).map((number) => ({ number, ...figures(number, ATTEMPTS) }));
}

const cases: [string, SetFilter, (number: number) => boolean][] = [
  ['everyone', {}, () => true],
  ['one athlete', { athletes: [id(5)] }, (number) => number % 40 === 4],
  [
    'one judge at one station',
    { judges: [id(41)], sheets: [{ id: 'lunge' }] },
    (n) => (n * 7) % 8 === 0 && n % 3 === 0,
  ],
  ['a tag', { tags: ['tenth'] }, (number) => number % 10 === 0],
  ['a span', { from: 20 * 3_600_000, to: 60 * 3_600_000 }, (number) => number >= 20 && number < 60],
  ['nobody', { athletes: [id(77)] }, () => false],
];

describe.each(cases)('the report over %s', (_what, filter, keep) => {
  const own = written(keep);
  const sum = (of: (facts: SetFacts) => number) => own.reduce((total, { facts }) => total + of(facts), 0);

  test('has a row for each set, oldest first', () => {
    const rows = reader.reports.sets(filter);
    expect(rows.map((row) => [row.id, row.facts])).toEqual(own.map(({ number, facts }) => [setup(number).id, facts]));
  });

  test('adds up to the sums of its sets', () => {
    const [totals] = reader.reports.totals(filter);
    if (own.length === 0) return expect(totals).toBeUndefined();
    expect(totals).toEqual({
      group: '',
      sets: own.length,
      attempts: sum((facts) => facts.attempts),
      counted: sum((facts) => facts.counted),
      cautions: 0,
      noReps: sum((facts) => facts.noReps),
      unexplained: sum((facts) => facts.unexplained),
      reversals: sum((facts) => facts.reversals),
      slips: 0,
      clockMs: sum((facts) => facts.clockMs),
      startMs: sum((facts) => facts.ledger?.startMs ?? 0),
      workMs: sum((facts) => facts.ledger?.workMs ?? 0),
      noRepMs: sum((facts) => facts.ledger?.noRepMs ?? 0),
      breakMs: 0,
      costSeconds: sum((facts) => facts.cost?.seconds ?? 0),
      setsWithCost: own.length,
      noRepsWithCost: sum((facts) => facts.noReps),
      attemptsWithCost: sum((facts) => facts.attempts),
    });
  });

  test('has its reasons', () => {
    const found = new Map<string, { noReps: number; seconds: number }>();
    for (const { fault, noReps, seconds } of own.flatMap((item) => item.reasons)) {
      const old = found.get(fault) ?? { noReps: 0, seconds: 0 };
      found.set(fault, { noReps: old.noReps + noReps, seconds: old.seconds + seconds });
    }
    const merged = new Map<string, { noReps: number; seconds: number }>();
    for (const row of reader.reports.reasons(filter)) {
      const old = merged.get(row.fault) ?? { noReps: 0, seconds: 0 };
      merged.set(row.fault, { noReps: old.noReps + row.noReps, seconds: old.seconds + row.seconds });
      expect(row.noRepsWithSeconds).toBe(row.noReps);
    }
    expect(merged).toEqual(found);
  });

  test.each(['progress', 'pace'] as const)('has its attempts in the bins of %s, together and set by set', (scale) => {
    const bins = new Array<[number, number]>(scales[scale].bins).fill([0, 0]);
    for (const { attempts: all } of own) {
      for (const [place, attempt] of all.entries()) {
        const bin = binOf(attempt, scale, all[place - 1]);
        if (bin === null) continue;
        const [attempts, noReps] = bins[bin] ?? [0, 0];
        bins[bin] = [attempts + 1, noReps + Number(attempt.verdict === 'no-rep')];
      }
    }
    const expected = bins
      .map(([attempts, noReps], bin) => ({ bin, attempts, noReps }))
      .filter((row) => row.attempts > 0);
    expect(reader.reports.bins(filter, scale)).toEqual(expected);
    const bySet = reader.reports.binsBySet(filter, scale);
    expect(new Set(bySet.set).size).toBe(own.length);
    const total = (column: Int32Array) => column.reduce((sumSoFar, value) => sumSoFar + value, 0);
    // On the scale of pace the first attempt of a set has no place, nor has one after a no-rep.
    const after = (all: readonly AttemptFact[]) => all.filter((_, i) => i > 0 && all[i - 1]?.verdict !== 'no-rep');
    const placed = own.flatMap((item) => (scale === 'pace' ? after(item.attempts) : item.attempts));
    expect(total(bySet.attempts)).toBe(placed.length);
    expect(total(bySet.noReps)).toBe(placed.filter((attempt) => attempt.verdict === 'no-rep').length);
  });

  test('has the attempts of its latest sets', () => {
    const latest = own.slice(-4);
    expect(reader.reports.attempts(filter, 4)).toEqual(
      latest.map(({ number, attempts }) => ({ id: setup(number).id, attempts })),
    );
  });
});

test('sums are told apart by athlete, judge or sheet', () => {
  for (const by of ['athlete', 'judge', 'sheet'] as const) {
    const totals = reader.reports.totals({}, by);
    expect(totals).toHaveLength({ athlete: 40, judge: 8, sheet: 3 }[by]);
    for (const row of totals) {
      const narrowed = {
        athlete: { athletes: [row.group] },
        judge: { judges: [row.group] },
        sheet: { sheets: [{ id: row.group }] },
      };
      expect(reader.reports.totals(narrowed[by])).toEqual([{ ...row, group: '' }]);
      const own = reader.reports.reasons({}, by).filter((reason) => reason.group === row.group);
      expect(reader.reports.reasons(narrowed[by])).toEqual(own.map((reason) => ({ ...reason, group: '' })));
    }
  }
});

describe('facts', () => {
  test('a set is stale from its first event until facts of its last are written', async () => {
    const own = await freshLedger();
    const { id: set } = furnish(own);
    expect(own.facts.stale(1, 9)).toEqual([]);
    own.log.append([go(set)]);
    expect(own.facts.stale(1, 9)).toEqual([{ id: set, lastN: 1 }]);
    own.log.append(wholeLog(set, 5));
    expect(own.facts.stale(1, 9)).toEqual([{ id: set, lastN: 5 }]);
    own.facts.write(set, { ...figures(1, 3), appliedN: 4, projection: 1 });
    expect(own.facts.stale(1, 9)).toEqual([{ id: set, lastN: 5 }]);
    own.facts.write(set, { ...figures(1, 3), appliedN: 5, projection: 1 });
    expect(own.facts.stale(1, 9)).toEqual([]);
    expect(own.facts.stale(2, 9)).toEqual([{ id: set, lastN: 5 }]);
    own.facts.write(set, { ...figures(1, 3), appliedN: 5, projection: 2 });
    expect(own.facts.stale(2, 9)).toEqual([]);
  });

  test('what is known in memory equals what a new start looks up', async () => {
    const stale = ledger.facts.stale(1, 1_000);
    ledger.log.append([{ set: setup(7).id, pad: 'pad-x', seq: 1, at: 99_000, kind: 'sign-off', by: null, name: '' }]);
    ledger.log.append([{ set: setup(5).id, pad: 'pad-x', seq: 2, at: 99_000, kind: 'sign-off', by: null, name: '' }]);
    const now = ledger.facts.stale(1, 1_000);
    expect(now.slice(stale.length).map((item) => item.id)).toEqual([setup(7).id, setup(5).id]);
    ledger.facts.stale(2, 1);
    expect(ledger.facts.stale(1, 1_000)).toEqual(now);
    for (const item of now) {
      const number = item.id === setup(7).id ? 7 : 5;
      ledger.facts.write(item.id, { ...figures(number, ATTEMPTS), appliedN: item.lastN, projection: 1 });
    }
    expect(ledger.facts.stale(1, 9)).toEqual([]);
  });

  test('of an earlier event never replace those of a later one', async () => {
    const own = await freshLedger();
    const { id: set } = furnish(own);
    own.log.append(wholeLog(set, 14));
    const late = { ...figures(1, 12), appliedN: 14, projection: 1 };
    expect(own.facts.write(set, late)).toBe('written');
    expect(own.facts.write(set, { ...figures(1, 3), appliedN: 9, projection: 1 })).toBe('older');
    expect(own.reports.attempts({}, 9)[0]?.attempts).toEqual(late.attempts);
    expect(own.facts.write(set, { ...figures(1, 3), appliedN: 9, projection: 2 })).toBe('written');
    expect((await refusal(() => own.facts.write(id(9), late))).code).toBe('unknown-set');
  });

  test('forgotten and built again are what they were', async () => {
    const own = await freshLedger();
    fill(own, 12, 9);
    const look = () => [
      own.sets.list({ limit: 99 }),
      own.reports.totals({ practice: 'also' }, 'athlete'),
      own.reports.reasons({ practice: 'also' }, 'judge'),
      own.reports.bins({ practice: 'also' }, 'pace'),
      own.reports.attempts({ practice: 'also' }, 99),
    ];
    const before = look();
    own.facts.forget();
    expect(own.reports.attempts({}, 99)).toEqual([]);
    const stale = own.facts.stale(1, 99);
    expect(stale).toHaveLength(12);
    stale.forEach(({ id: set, lastN }, number) => {
      own.facts.write(set, { ...figures(number, 9), appliedN: lastN, projection: 1 });
    });
    expect(look()).toEqual(before);
  });

  test('a cost that cannot be estimated stays out of the sums, and is counted as such', async () => {
    const own = await freshLedger();
    const { id: set } = furnish(own);
    own.log.append(wholeLog(set, 14));
    const { facts, attempts } = figures(1, 12);
    const reasons = [{ fault: 'knee', noReps: 1, seconds: null }];
    own.facts.write(set, {
      facts: { ...facts, cost: null, ledger: null },
      reasons,
      attempts,
      appliedN: 14,
      projection: 1,
    });
    expect(own.reports.totals({})[0]).toMatchObject({ sets: 1, costSeconds: 0, setsWithCost: 0, noRepsWithCost: 0 });
    expect(own.reports.reasons({})[0]).toMatchObject({ noReps: 1, seconds: 0, noRepsWithSeconds: 0 });
    expect(own.reports.sets({})[0]?.facts).toEqual({ ...facts, cost: null, ledger: null });
  });
});
