import { expect, test } from 'vitest';
import { runCampaign } from './pads-campaign.ts';

test('eight pads, a bad line, pages reloaded and the desk killed: every call shown is in the log, once and in order', async () => {
  const outcome = await runCampaign({
    seconds: 6,
    pads: 8,
    rate: 4,
    killEveryMs: 2_000,
    reloadAfterMs: 2_500,
    seed: 20,
  });
  expect(outcome).toMatchObject({ missing: 0, lost: 0, tooMany: 0, outOfOrder: 0, wrong: 0 });
  // That it was a hard time, or nothing was shown.
  for (const what of ['kills', 'reloads', 'cuts', 'twice', 'late'] as const)
    expect(outcome[what], what).toBeGreaterThan(0);
  expect(outcome.shown).toBeGreaterThan(60);
  expect(outcome.acknowledged).toBe(outcome.shown);
}, 120_000);
