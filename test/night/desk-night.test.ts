import { expect, test } from 'vitest';
import { foldNight } from '../../shared-types/night/fold.ts';
import { crowd, first, logOf, nightId, openNight } from './small-night.ts';

const every2s = (count: number, lag = 0) => Array.from({ length: count }, (_, index) => 2_000 * (index + 1) + lag);

async function judgedNight() {
  const night = await openNight();
  const ids: Record<string, string> = {};
  for (const device of ['main-1', 'main-2', 'shadow-1', 'shadow-2']) {
    const { lane } = await first(await night.pad(device).duty());
    if (lane === null) throw new Error('the heat is open');
    ids[device] = lane.setup.id;
  }
  const send = (device: string, pattern: string, times: number[], end: number) =>
    night.pad(device).append({ events: logOf(ids[device] ?? '', device, pattern, times, end) });
  // Ten counted reps are the goal; the shadow of lane 1 is 0.2 s later, misses one call, and sees one no-rep otherwise.
  await send('main-1', '..D.......D.', every2s(12), 24_000);
  await send(
    'shadow-1',
    '..D......D.',
    every2s(12, 200).filter((_, index) => index !== 6),
    24_200,
  );
  await send('main-2', '..........', every2s(10), 20_000);
  await send('shadow-2', '.........L', every2s(10, 100), 20_100);
  return { ...night, ids };
}

test('a small night, from its plan to the debrief', async () => {
  const { calls, append, ids } = await judgedNight();
  await append({ kind: 'heat-go', heat: 1 }).then(() => append({ kind: 'heat-close', heat: 1 }));
  await append({ kind: 'close' });
  const record = await calls.nights.get({ id: nightId });
  const state = foldNight(nightId, record.events);
  expect(state.clashes).toEqual([]);
  expect(state.heats[0]?.phase).toBe('closed');
  const debrief = await calls.nights.debrief({ id: nightId });
  const [station] = debrief.results;
  expect(station?.rankedBy).toBe('time');
  expect(
    station?.lines.map(({ place, state: how, clockMs, counted, noReps }) => [place, how, clockMs, counted, noReps]),
  ).toEqual([
    [1, 'finished', 20_000, 10, 0],
    [2, 'finished', 24_000, 10, 2],
  ]);
  // By hand: 21 attempts called by both, one missed by a shadow; no-rep by both once and twice.
  expect(debrief.overall).toMatchObject({ sets: 2, pairs: 21, missedByFirst: 0, missedBySecond: 1 });
  expect(debrief.overall.bothNoRep + debrief.overall.firstOnly).toBe(2);
  expect(debrief.overall.lagS?.median).toBeCloseTo(0.2, 1);
  expect(debrief.alpha.withMisses).not.toBeNull();
  expect(debrief.talk[0]).toMatchObject({ why: 'verdicts-differ' });
  expect(debrief.talk.length).toBeGreaterThan(1);
  expect(debrief.pairs).toHaveLength(2);
  expect(debrief.judges.map(({ asMain, asShadow }) => asMain + asShadow)).toEqual([1, 1, 1, 1]);
  expect(debrief.faults.map(({ code }) => code).toSorted()).toEqual(['depth', 'line']);
  const results = await calls.nights.export({ id: nightId, format: 'results-csv' });
  expect(results.text.split('\r\n')).toHaveLength(4);
  const callsFile = await calls.nights.export({ id: nightId, format: 'calls-csv' });
  expect(callsFile.text.split('\r\n')).toHaveLength(24);
  const file: unknown = JSON.parse((await calls.nights.export({ id: nightId, format: 'json' })).text);
  expect(file).toMatchObject({ format: 'plumbline-night', sets: { sets: [{}, {}, {}, {}] } });
  expect((await calls.nights.list())[0]).toMatchObject({ phase: 'closed', athletes: 2, judges: 4, heatsClosed: 1 });
  expect(Object.keys(ids)).toHaveLength(4);
});

test('a pad does what its place needs and nothing else', async () => {
  const { pad, ids, append } = await judgedNight();
  const event = logOf(ids['main-2'] ?? '', 'intruder', '', [], 1)[1];
  if (event === undefined) throw new Error('a log has a finish');
  await expect(pad('main-1').append({ events: [event] })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
  await expect(pad('main-1').log({ set: ids['shadow-1'] ?? '' })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
  await expect(pad('main-1').board()).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
  await expect(pad('stranger').hello()).rejects.toMatchObject({ code: 'NOT_ALLOWED', data: { what: 'no-place' } });
  await pad('main-1').aligned({ set: ids['main-1'] ?? '', offsetMs: -12.5, uncertaintyMs: 4 });
  // Moved to the other lane in mid-set: what it kept of the first still arrives, the second is its own as well.
  await append({ kind: 'pad', device: 'main-1', name: 'one', role: 'judge', lane: '2' });
  expect((await pad('main-1').append({ events: [event] })).acknowledgements).toEqual([
    { pad: 'intruder', seq: event.seq, outcome: 'new' },
  ]);
  const late = { ...event, set: ids['main-1'] ?? '', seq: 77 };
  expect((await pad('main-1').append({ events: [late, late] })).acknowledgements.map(({ outcome }) => outcome)).toEqual(
    ['new', 'already'],
  );
  await append({ kind: 'revoke', device: 'main-1' });
  await expect(pad('main-1').append({ events: [late] })).rejects.toMatchObject({ data: { what: 'revoked' } });
});

test('the board shows a lane as its set grows', async () => {
  const { pad, calls } = await judgedNight();
  const { lane } = await first(await pad('main-1').duty());
  const stream = await pad('wall').board();
  const seen: unknown[] = [];
  for await (const change of stream) {
    seen.push(change);
    if (change.kind === 'whole') {
      expect(
        change.board.lanes.map(({ counted, noReps, lastReason }) => [counted, noReps, lastReason?.code ?? null]),
      ).toEqual([
        [10, 2, 'depth'],
        [10, 0, null],
      ]);
      expect(crowd.map(({ name }) => name)).toContain(change.board.lanes[0]?.athlete);
      const appeal = { set: lane?.setup.id ?? '', pad: 'desk', seq: 1, at: 30_000, reason: '', by: null } as const;
      await calls.sets.append({
        events: [{ ...appeal, kind: 'appeal', of: { pad: 'main-1', seq: 4 }, outcome: 'open' }],
      });
    } else {
      expect(change.lane).toMatchObject({ lane: { id: '1' }, openAppeals: 1 });
      break;
    }
  }
  expect(seen).toHaveLength(2);
});

test('what could have no effect is refused and not written', async () => {
  const { append, calls, plan } = await openNight();
  const before = (await calls.nights.get({ id: nightId })).events.length;
  await expect(append({ kind: 'heat-open', heat: 1 })).rejects.toMatchObject({ data: { what: 'out-of-order' } });
  await expect(append({ kind: 'plan', why: 'by-hand', heats: [[]] })).rejects.toMatchObject({
    data: { what: 'begun-changed' },
  });
  const lane = plan.heats?.[0]?.[0];
  if (lane === undefined) throw new Error('there is a lane');
  const unknown = { ...lane, judge: '00000000-0000-4000-8000-00000000dead' };
  await expect(
    append({ kind: 'plan', why: 'by-hand', heats: [...(plan.heats ?? []), [unknown]] }),
  ).rejects.toMatchObject({
    data: { what: 'unknown-name' },
  });
  expect((await calls.nights.get({ id: nightId })).events).toHaveLength(before);
  // A plan that breaks a rule of fairness is kept, and told.
  const kept = await append({ kind: 'plan', why: 'by-hand', heats: [...(plan.heats ?? []), [lane]] });
  expect(kept.breaches.map(({ rule }) => rule)).toContain('no-rest');
});
