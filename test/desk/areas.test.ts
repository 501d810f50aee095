import { describe, expect, test } from 'vitest';
import { openDesk } from '../../main/desk/desk.ts';
import { defaultSettings } from '../../shared-types/contract/settings.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';
import { athlete, somebody } from './fixtures.ts';
import { openTestDesk } from './open-test-desk.ts';

describe('people', () => {
  test('are added, changed, archived and restored, never deleted', async () => {
    const { calls } = await openTestDesk();
    const changed = await calls.people.save({ ...athlete, nickname: 'Nes' });
    expect(changed.nickname).toBe('Nes');
    await calls.people.archive({ id: athlete.id });
    expect((await calls.people.list({ archived: false })).map((line) => line.person.name)).toEqual(['Tobias Quill']);
    expect(await calls.people.list({ archived: true })).toHaveLength(2);
    await calls.people.restore({ id: athlete.id });
    expect(await calls.people.list({ archived: false })).toHaveLength(2);
    await expect(calls.people.archive({ id: somebody(8, 'x').id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  });

  test('without a name are refused in words', async () => {
    const { calls } = await openTestDesk();
    await expect(calls.people.save({ ...athlete, name: '  ' })).rejects.toMatchObject({
      code: 'BAD_REQUEST',
      message: expect.stringContaining('a person needs a name'),
    });
  });
});

describe('standards', () => {
  test('begin with the three sheets and take the next version only', async () => {
    const { calls } = await openTestDesk();
    expect((await calls.standards.list()).map((sheet) => sheet.id).sort()).toEqual([
      'box-jump-over',
      'jump-burpee',
      'wall-throw',
    ]);
    const next = { ...wallThrow, version: 2, shipped: false, loadsKg: [5] };
    expect(await calls.standards.publish(next)).toEqual(next);
    await expect(calls.standards.publish({ ...next, loadsKg: [7] })).rejects.toMatchObject({ code: 'CONFLICT' });
    await expect(calls.standards.publish({ ...next, version: 9 })).rejects.toMatchObject({ code: 'CONFLICT' });
    expect((await calls.standards.versions({ id: 'wall-throw' })).map((sheet) => sheet.version)).toEqual([2, 1]);
    expect(await calls.standards.get({ id: 'wall-throw', version: 1 })).toEqual(wallThrow);
  });
});

describe('settings', () => {
  test('keep what is put and default the rest', async () => {
    const { calls } = await openTestDesk();
    expect(await calls.settings.get()).toEqual(defaultSettings);
    await calls.settings.put({ sounds: false, keys: { count: ['PageDown'] } });
    expect(await calls.settings.get()).toEqual({ ...defaultSettings, sounds: false, keys: { count: ['PageDown'] } });
  });

  test('survive a field in another shape', async () => {
    const { calls, desk } = await openTestDesk();
    desk.ledger.settings.put('settings', { sounds: 'loud', countdownS: 5 });
    expect(await calls.settings.get()).toEqual({ ...defaultSettings, countdownS: 5 });
  });
});

describe('the desk', () => {
  test('tells its listeners what changed', async () => {
    const { calls } = await openTestDesk();
    const stream = await calls.desk.changes();
    const next = stream.next();
    await calls.people.save(somebody(5, 'Someone New'));
    expect(await next).toEqual({ done: false, value: { topic: 'people', id: somebody(5, '').id } });
    await stream.return();
  });

  test('cannot be opened twice on one database, in words', async () => {
    const { desk } = await openTestDesk();
    const second = await openDesk({ ledgerPath: desk.ledger.path, host: 'browser', demo: false, version: '0.0.0' });
    expect(second.ok).toBe(false);
    if (!second.ok)
      expect(second.problem).toMatchObject({ kind: 'in-use', message: expect.stringContaining(desk.ledger.path) });
  });
});
