import { expect, test } from 'vitest';
import { keepDailyCopy } from '../../main/desk/daily-copy.ts';
import { openTestDesk } from './open-test-desk.ts';

test('the day’s copy is taken soon after the start, once, and closing waits for it', async () => {
  const { desk } = await openTestDesk();
  const keeper = keepDailyCopy(desk.ledger.copies, 0);
  await new Promise((resolve) => setTimeout(resolve, 20));
  await keeper.close();
  expect(desk.ledger.copies.list().map((copy) => copy.kind)).toEqual(['daily']);
  expect(await desk.ledger.copies.daily()).toBeNull();
});
