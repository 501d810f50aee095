import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { fillDemo } from '../../main/desk/demo/fill-demo.ts';
import { openLedger } from '../../main/ledger/open.ts';
import { setEvent } from '../../shared-types/log/events.ts';
import { foldSet, tally } from '../../shared-types/log/fold.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';

const now = Date.UTC(2026, 10, 9, 12);

async function filled() {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-demo-'));
  const opened = await openLedger(join(folder, 'demo.db'), { now: () => now });
  if (opened.state !== 'open') throw new Error('the new ledger did not open');
  const { ledger } = opened;
  onTestFinished(() => {
    ledger.close();
    rmSync(folder, { recursive: true, force: true });
  });
  ledger.sheets.seed(shippedSheets);
  const sets = fillDemo(ledger, now);
  return { ledger, sets, recorded: ledger.log.after(0, 1_000_000).map((item) => item.event) };
}

test('the demonstration is two months of a gym, every log well-formed and without a clash, the same every time', async () => {
  const one = await filled();
  const other = await filled();
  expect(one.recorded).toEqual(other.recorded);
  expect(one.sets).toBeGreaterThan(150);
  expect(fillDemo(one.ledger, now)).toBe(0);
  const people = one.ledger.people.list();
  expect(people.filter((person) => person.athlete)).toHaveLength(12);
  expect(people.filter((person) => person.judge).length).toBeGreaterThanOrEqual(3);
  const bySet = Map.groupBy(one.recorded, (event) => event.set);
  const stations = new Set<string>();
  for (const [id, events] of bySet) {
    for (const event of events) expect(setEvent.safeParse(event).success).toBe(true);
    const state = foldSet(id, events);
    expect(state.clashes).toEqual([]);
    expect(state.phase).toBe('finished');
    expect(tally(state).attempts).toBeGreaterThan(10);
    expect(state.startedAt).toBeLessThan(now);
    stations.add(one.ledger.sets.get(id).sheet.id);
  }
  expect([...stations].sort()).toEqual(['jump-burpee', 'wall-throw']);
}, 60_000);
