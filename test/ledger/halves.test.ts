import { expect, test } from 'vitest';
import { packBins, unpackBins } from '../../main/ledger/bins.ts';
import { figures } from './big.ts';
import { freshLedger, furnish, wholeLog } from './helpers.ts';

test('a no-rep with two faults counts half for each, and is kept so', async () => {
  const ledger = await freshLedger();
  const { id: set } = furnish(ledger);
  ledger.log.append(wholeLog(set, 14));
  const reasons = ['knee', 'tall'].map((fault) => ({ fault, noReps: 0.5, seconds: 1.25 }));
  expect(ledger.facts.write(set, { ...figures(1, 12), reasons, appliedN: 14, projection: 1 })).toBe('written');
  expect(ledger.reports.reviewReasons({}).map(({ n: _n, ...row }) => row)).toEqual(reasons);
});

test('packed bins are read back, set by set and bin by bin', () => {
  const first = figures(1, 12).attempts;
  const second = figures(4, 5).attempts;
  const packed = [
    { n: 7, bins: packBins(first, 'progress') },
    { n: 3, bins: packBins([], 'progress') },
    { n: 9, bins: packBins(second, 'progress') },
  ];
  const rows = unpackBins(packed.map(({ n, bins }) => `${n} ${bins.toString()}`).join(';'));
  expect([...rows.set]).toEqual([...first.map(() => 7), ...second.map(() => 9)]);
  expect([...rows.bin]).toEqual([...first, ...second].map((attempt) => Math.floor(attempt.progress * 20 + 1e-9)));
  expect([...rows.attempts]).toEqual([...first, ...second].map(() => 1));
  expect([...rows.noReps]).toEqual([...first, ...second].map(({ verdict }) => Number(verdict === 'no-rep')));
  expect(unpackBins('').set).toHaveLength(0);
});
