import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../browser.ts';
import { startProgram } from '../program.ts';
import { compare } from './figures.ts';

const size = { width: 1280, height: 800 };
const MEASURED_MS = 12_000;

/** Milliseconds between the frames of the page as it stands, for some seconds. */
function frameTimes(page: Page, milliseconds: number): Promise<number[]> {
  return page.evaluate(
    (span) =>
      new Promise<number[]>((resolve) => {
        const times: number[] = [];
        let before = performance.now();
        const end = before + span;
        requestAnimationFrame(function frame() {
          const now = performance.now();
          times.push(now - before);
          before = now;
          if (now < end) requestAnimationFrame(frame);
          else resolve(times);
        });
      }),
    milliseconds,
  );
}

/** Puts a canvas of this size on the page that is cleared in every frame, and nothing else; the answer takes it away. */
async function emptyScene(page: Page, box: { width: number; height: number }): Promise<() => Promise<void>> {
  await page.evaluate(({ width, height }) => {
    const canvas = Object.assign(document.createElement('canvas'), { width, height, id: 'empty' });
    document.body.prepend(canvas);
    const context = canvas.getContext('webgl2');
    requestAnimationFrame(function frame() {
      if (!canvas.isConnected || context === null) return;
      context.clearColor(0.5, 0.5, 0.5, 1);
      context.clear(context.COLOR_BUFFER_BIT);
      requestAnimationFrame(frame);
    });
  }, box);
  return () => page.evaluate(() => document.getElementById('empty')?.remove());
}

/** Who draws: the graphics driver's own name. */
function driverOf(page: Page): Promise<string> {
  return page.evaluate(() => {
    const context = document.createElement('canvas').getContext('webgl2');
    const info = context?.getExtension('WEBGL_debug_renderer_info');
    return context && info ? String(context.getParameter(info.UNMASKED_RENDERER_WEBGL)) : 'unnamed';
  });
}

/** Begins a live stream of burpees, which has most to draw; resolves once the athlete moves. */
async function beginStream(page: Page): Promise<{ width: number; height: number }> {
  await page.getByRole('combobox', { name: 'Who is judging?' }).fill('Bench');
  await page.getByRole('option', { name: 'Add Bench' }).click();
  await page.getByRole('radio', { name: 'Live stream', exact: true }).check();
  await page.getByRole('radio', { name: 'Jump burpee', exact: true }).check();
  await page.getByRole('radio', { name: '20', exact: true }).check();
  await page.getByRole('button', { name: 'Go to the drill' }).click();
  await page.getByRole('button', { name: 'Begin', exact: true }).click();
  await page.getByText('No call yet').waitFor();
  const box = await page.getByRole('img', { name: /^An athlete/ }).boundingBox();
  return { width: Math.round(box?.width ?? 0), height: Math.round(box?.height ?? 0) };
}

/** The time between two frames of a live stream, against a scene that is only cleared, in one run on one page size. */
export async function eyeBench(): Promise<string[]> {
  const program = await startProgram();
  let browser: Browser | undefined;
  try {
    browser = await openBrowser(['--enable-unsafe-swiftshader']);
    const page = await (await browser.newContext({ viewport: size, locale: 'en-GB' })).newPage();
    await page.goto(program.address);
    await page.getByRole('navigation').waitFor();
    await page.evaluate(() => {
      location.hash = '#/eye';
    });
    await page.getByRole('heading', { name: 'Train the eye' }).waitFor();
    const driver = await driverOf(page);
    const takeAway = await emptyScene(page, { width: 780, height: 640 });
    await frameTimes(page, 1_000);
    const empty = await frameTimes(page, MEASURED_MS);
    await takeAway();
    const box = await beginStream(page);
    await frameTimes(page, 2_000);
    const stream = await frameTimes(page, MEASURED_MS);
    const software = /swiftshader|llvmpipe|software/i.test(driver);
    return [
      `drawn by ${driver}${software ? ' (software, no graphics chip: the spare quality)' : ''}`,
      ...compare(
        { what: `time between frames of a live stream at ${box.width} x ${box.height}`, times: stream },
        { what: 'an empty scene at 780 x 640', times: empty },
      ),
    ];
  } finally {
    await browser?.close();
    await program.stop();
  }
}
