import type { Page } from 'playwright-core';
import { briefFirst, desktop, goNow, openProgram } from '../app/judge-driver.ts';
import { openBrowser } from '../browser.ts';
import { startProgram } from '../program.ts';
import { compare } from './figures.ts';

// Below the first set's goal of a hundred.
const TAPS = 90;

declare global {
  interface Window {
    paintTimes: number[];
  }
}

/** Notes, for each key press, the time from its own time stamp to the end of the frame that shows another count. */
function watchPaint(): void {
  window.paintTimes = [];
  const shown = () => document.querySelector('output')?.textContent;
  let last = shown();
  addEventListener(
    'keydown',
    (event) => {
      const look = () => {
        const { port1, port2 } = new MessageChannel();
        // A message posted in a frame is read once that frame has been drawn.
        port1.onmessage = () => {
          if (shown() === last) {
            requestAnimationFrame(look);
            return;
          }
          last = shown();
          window.paintTimes.push(performance.now() - event.timeStamp);
        };
        port2.postMessage(null);
      };
      requestAnimationFrame(look);
    },
    true,
  );
}

async function pressAndRead(page: Page): Promise<number[]> {
  await page.evaluate(watchPaint);
  for (let tap = 1; tap <= TAPS; tap += 1) {
    await page.keyboard.press('Space');
    // The page's policy forbids what waitForFunction would evaluate in it.
    while ((await page.evaluate(() => window.paintTimes.length)) < tap) await page.waitForTimeout(5);
    await page.waitForTimeout(20 + (tap % 7) * 5);
  }
  return page.evaluate(() => window.paintTimes);
}

/** From a key press on the Judge screen to the frame that shows it, against a bare page that adds one to a text. */
export async function paintBench(): Promise<string[]> {
  const browser = await openBrowser();
  const program = await startProgram();
  try {
    const { page, context } = await openProgram(browser, program, desktop);
    await briefFirst(page, 'Bench', 'Bench Judge');
    await goNow(page);
    const judge = await pressAndRead(page);
    await context.close();
    const bare = await browser.newPage();
    await bare.setContent('<output>0</output>');
    await bare.evaluate(() => {
      addEventListener('keydown', () => {
        const output = document.querySelector('output');
        if (output !== null) output.textContent = String(Number(output.textContent) + 1);
      });
    });
    const reference = await pressAndRead(bare);
    return compare(
      { what: 'tap to paint on the Judge screen', times: judge },
      { what: 'a bare page', times: reference },
    );
  } finally {
    await browser.close();
    await program.stop();
  }
}
