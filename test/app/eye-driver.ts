// A scripted judge for Train the eye. It reads the truth through the hook that the area offers to tests
// (renderer/areas/eye/test-hook.ts), and errs where its plan says so.

import type { Page } from 'playwright-core';
import type { EyeHook } from '../../renderer/areas/eye/test-hook.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

/** Software drawing has to be allowed by name in newer browsers. */
export const browserArguments = ['--enable-unsafe-swiftshader'];

export async function offerTruth(page: Page): Promise<void> {
  await page.addInitScript(() => localStorage.setItem('plumbline-test-eye', 'on'));
}

export interface Trial {
  readonly broken: readonly string[];
  readonly seenMs: number;
  readonly margins: Readonly<Record<string, number | null>>;
}

/** Waits for the phase with this name; a drill that paused because the machine was busy is gone on with. */
export async function reachPhase(page: Page, wanted: string, within = 60_000): Promise<void> {
  const end = Date.now() + within;
  for (;;) {
    const phase = await page.evaluate(() => window.plumblineTestEye?.phase() ?? '');
    if (phase === wanted) return;
    if (phase === 'paused') await page.keyboard.press('Space');
    if (Date.now() > end) throw new Error(`the drill is at "${phase}", not at "${wanted}"`);
    await page.waitForTimeout(40);
  }
}

/**
 * Waits until the rep with this number (spoilt ones left out) has been seen as far as its verdict needs.
 * @returns the rep, or null where the drill ended before
 */
export async function nextTrial(page: Page, index: number, within = 30_000): Promise<Trial | null> {
  const end = Date.now() + within;
  for (;;) {
    const found = await page.evaluate((at) => {
      const hook: EyeHook | undefined = window.plumblineTestEye;
      const trial = hook?.trials()[at];
      const start = hook?.startAt() ?? null;
      const seen = trial !== undefined && start !== null && performance.now() >= start + trial.seenMs + 60;
      return { phase: hook?.phase() ?? '', trial: seen && !trial.called ? trial : null };
    }, index);
    if (found.trial !== null) return found.trial;
    if (found.phase === 'done') return null;
    if (found.phase === 'paused') await page.keyboard.press('Space');
    if (Date.now() > end) throw new Error(`rep ${index} did not come; the drill is at "${found.phase}"`);
    await page.waitForTimeout(20);
  }
}

export type Said = 'counted' | { readonly noRep: string };

export async function press(page: Page, said: Said): Promise<void> {
  const code = said === 'counted' ? null : said.noRep;
  const initial = wallThrow.faults.find((fault) => fault.code === code)?.initial;
  await page.keyboard.press(code === null ? 'Space' : `Key${initial}`);
}

/** What the scores must say of these calls, counted by hand from truth and call. */
export function scoresOf(calls: readonly { readonly broken: readonly string[]; readonly said: Said }[]) {
  const faulty = calls.filter((one) => one.broken.length > 0);
  const good = calls.filter((one) => one.broken.length === 0);
  const hits = faulty.filter((one) => one.said !== 'counted');
  const falseAlarms = good.filter((one) => one.said !== 'counted').length;
  const reasons = hits.filter((one) => one.said !== 'counted' && one.broken.includes(one.said.noRep)).length;
  return {
    hits: `${hits.length} of ${faulty.length}`,
    falseAlarms: `${falseAlarms} of ${good.length}`,
    reasons: `${reasons} of ${hits.length}`,
    right: `${hits.length + good.length - falseAlarms} of ${calls.length} called right`,
  };
}

/** A score as it stands on the result: its value and what stands beside it. */
export async function score(page: Page, name: string): Promise<string> {
  const text = await page.getByTestId(`score-${name}`).locator('dd').textContent();
  return (text ?? '').replace(/\s+/g, ' ').trim();
}
