import { afterEach, expect, test, vi } from 'vitest';
import { codeIn, isPadPage, plainCode, readStanding, sendCode, whyNoPad } from '../../renderer/link/pad/entry.ts';
import { type AwakePage, keepAwake } from '../../renderer/link/pad/keep-awake.ts';
import { guardLeaving, type RiskSources, riskOfLeaving } from '../../renderer/link/pad/leaving.ts';
import { alignClock } from '../../renderer/link/pad/pad-clock.ts';
import { until } from '../link/drafts.ts';
import { endAll, openPads } from './pads-fixture.ts';

afterEach(async () => {
  await endAll();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('a pad’s page is known by its path, and the code of the QR code by its hash', () => {
  expect(isPadPage({ protocol: 'http:', pathname: '/pad/AbC/' })).toBe(true);
  expect(isPadPage({ protocol: 'http:', pathname: '/AbC/' })).toBe(false);
  expect(isPadPage({ protocol: 'app:', pathname: '/pad/AbC/' })).toBe(false);
  expect(codeIn('#/join/AB2-34K')).toBe('AB2-34K');
  for (const hash of ['', '#/join/', '#/join/<b>', `#/join/${'A'.repeat(40)}`, '#/judge'])
    expect(codeIn(hash)).toBe('');
  expect(plainCode(' ab2-3 4k')).toBe('AB234K');
});

test('the entry tells a stranger, a wrong code, a phone that joined, and a desk that is away, in words', async () => {
  const { pads, port, base } = await openPads();
  const own = `http://127.0.0.1:${port}${base}`;
  const jar = { cookie: '' };
  const plain = fetch;
  // What a browser adds by itself.
  vi.stubGlobal('fetch', async (address: URL, request: RequestInit) => {
    const headers = new Headers(request.headers);
    headers.set('origin', `http://127.0.0.1:${port}`);
    headers.set('cookie', jar.cookie);
    const answer = await plain(address, { ...request, headers });
    jar.cookie = answer.headers.get('set-cookie')?.split(';')[0] ?? jar.cookie;
    return answer;
  });
  expect(await readStanding(own)).toMatchObject({ standing: 'stranger', words: expect.stringContaining('not joined') });
  expect(await sendCode(own, { code: 'AAAAAA', name: '' })).toMatchObject({
    words: expect.stringContaining('not good'),
  });
  expect(await whyNoPad(own)).toMatch(/no longer knows this phone/);
  const { code } = pads.newCode() ?? { code: '' };
  const typed = `${code.slice(0, 3).toLowerCase()} ${code.slice(3)}`;
  expect(await sendCode(own, { code: typed, name: 'Kim' })).toMatchObject({ standing: 'joined' });
  expect(await readStanding(own)).toMatchObject({ standing: 'joined' });
  await pads.close();
  expect(await readStanding(own)).toMatchObject({ standing: 'away', words: expect.stringContaining('Wi-Fi') });
  expect(await whyNoPad(own)).toMatch(/Judge on/);
});

/** A desk whose clock is ahead of the page's by `ahead`, behind a line that takes its time each way. */
function aligned(ahead: () => number, way: () => number) {
  const source = { wall: () => 5_000, now: () => performance.now() };
  const ask = async () => {
    await new Promise((resolve) => setTimeout(resolve, way()));
    const received = performance.now() + ahead();
    const answered = performance.now() + ahead();
    await new Promise((resolve) => setTimeout(resolve, way()));
    return { received, answered };
  };
  return alignClock(ask, async () => {}, source, { burst: 8, burstMs: 2, steadyMs: 5 });
}

test('the clock is aligned within its own uncertainty (offset and delay of RFC 5905), seconds off and on a shaky line', async () => {
  let ways = 0;
  const clock = aligned(
    () => 3_000_000,
    () => {
      ways += 1;
      return (ways * 7) % 20;
    },
  );
  await until(() => ways >= 20);
  const told = clock.deskNow();
  const truth = performance.now() + 3_000_000;
  clock.stop();
  expect(Math.abs((told?.at ?? 0) - truth)).toBeLessThanOrEqual((told?.uncertaintyMs ?? 0) + 1);
  expect(told?.uncertaintyMs).toBeLessThan(20);
  expect(Math.abs((clock.timeStampOf(truth) ?? 0) - (truth - 3_000_000))).toBeLessThanOrEqual(
    (told?.uncertaintyMs ?? 0) + 1,
  );
  expect(clock.alignment()?.offsetMs).toBeCloseTo((clock.deskNow()?.at ?? 0) - 5_000, -1);
});

test('when a clock is set in between, the old exchanges are forgotten at once', async () => {
  let ahead = 1_000;
  let asked = 0;
  const clock = aligned(
    () => ahead,
    () => {
      asked += 1;
      return asked < 10 ? 0 : 6;
    },
  );
  await until(() => asked >= 10);
  ahead = 61_000;
  const then = asked;
  // Slower exchanges than before: the clock filter alone would keep the quick old ones.
  await until(() => asked >= then + 6);
  expect(Math.abs((clock.deskNow()?.at ?? 0) - performance.now() - 61_000)).toBeLessThan(30);
  clock.stop();
});

test('leaving is guarded exactly while it would risk something', () => {
  const now = { connected: true, unsent: 0, storage: 'kept' as 'kept' | 'memory', judging: false };
  const sources: RiskSources = {
    connected: () => now.connected,
    unsent: () => now.unsent,
    storage: () => now.storage,
    judging: () => now.judging,
  };
  const page = new EventTarget() as unknown as Window;
  const stop = guardLeaving(sources, page);
  const asks = (): boolean => !page.dispatchEvent(new Event('beforeunload', { cancelable: true }));
  expect(asks()).toBe(false);
  Object.assign(now, { unsent: 2 });
  expect(asks()).toBe(false);
  Object.assign(now, { connected: false });
  expect(riskOfLeaving(sources)).toBe('page-does-not-come-back');
  expect(asks()).toBe(true);
  Object.assign(now, { unsent: 0, judging: true });
  expect(asks()).toBe(true);
  Object.assign(now, { connected: true, judging: false, unsent: 1, storage: 'memory' });
  expect(riskOfLeaving(sources)).toBe('calls-are-lost');
  expect(asks()).toBe(true);
  stop();
  expect(asks()).toBe(false);
});

/** As much of a page as keeping awake uses. */
function awakePage(can: { lock?: boolean; play?: boolean; capture?: boolean }) {
  const locks = { held: 0 };
  const track = { stop: vi.fn() };
  const video = { style: {}, setAttribute: vi.fn(), remove: vi.fn(), play: async () => {} };
  if (can.play !== true) video.play = async () => Promise.reject(new DOMException('no gesture', 'NotAllowedError'));
  const stream = { getTracks: () => [track] };
  const canvas = {
    getContext: () => ({ fillRect: vi.fn() }),
    ...(can.capture === false ? {} : { captureStream: () => stream }),
  };
  const events = new EventTarget();
  const document = Object.assign(events, {
    visibilityState: 'visible',
    createElement: (name: string) => (name === 'canvas' ? canvas : video),
    body: { append: vi.fn() },
  });
  const wakeLock = {
    request: async () => {
      locks.held += 1;
      return {
        release: async () => {
          locks.held -= 1;
        },
      };
    },
  };
  const page = { document, wakeLock: can.lock === true ? wakeLock : undefined };
  return { page: page as unknown as AwakePage, video, track, locks, document };
}

test('the screen is kept awake by the wake lock where there is one, again after the page was hidden', async () => {
  const { page, locks, document, video } = awakePage({ lock: true, play: true });
  const awake = keepAwake(page);
  await awake.begin();
  expect(awake.state.get()).toBe('held');
  expect(locks.held).toBe(1);
  expect(video.remove).not.toHaveBeenCalled();
  document.dispatchEvent(new Event('visibilitychange'));
  await vi.waitFor(() => expect(locks.held).toBe(1));
  awake.end();
  await vi.waitFor(() => expect(locks.held).toBe(0));
  expect(awake.state.get()).toBe('off');
});

test('without a secure origin a playing picture is tried, and where that cannot be either it is told', async () => {
  const plain = awakePage({ play: true });
  const awake = keepAwake(plain.page);
  await awake.begin();
  expect(awake.state.get()).toBe('likely');
  expect(plain.document.body.append).toHaveBeenCalledWith(plain.video);
  awake.end();
  expect(plain.video.remove).toHaveBeenCalled();
  expect(plain.track.stop).toHaveBeenCalled();
  for (const can of [{ play: false }, { play: true, capture: false }]) {
    const cannot = keepAwake(awakePage(can).page);
    await cannot.begin();
    expect(cannot.state.get()).toBe('not-held');
  }
});
