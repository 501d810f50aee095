import { createRouterClient } from '@orpc/server';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { Arrangement } from '../../shared-types/night/night.ts';
import { somebody } from '../desk/fixtures.ts';
import { openTestDesk } from '../desk/open-test-desk.ts';
import { arrangementOf, laneOf, personOf } from './rosters.ts';

export const nightId = '00000000-0000-4000-8000-000000007777';
/** Two athletes and four judges of an invented gym. */
export const crowd = [1, 2, 3, 4, 5, 6].map((index) =>
  somebody(index, `Somebody ${index}`, { athlete: index <= 2, judge: index > 2 }),
);

/** A desk with a night of one heat on two lanes with shadows, opened, its first heat open, a pad for each judge and a board. */
export async function openNight(changes: Partial<Arrangement> = {}) {
  const { desk, calls } = await openTestDesk({ people: false });
  for (const person of crowd) await calls.people.save(person);
  const arrangement = arrangementOf({
    shadows: true,
    lanes: [laneOf('1'), laneOf('2')],
    people: crowd.map(({ id, athlete, judge }) => ({ ...personOf(0), id, athlete, judge })),
    ...changes,
  });
  const night = { id: nightId, name: 'First night', date: '2026-09-07', createdAt: 1 };
  await calls.nights.create({ night, arrangement });
  const append = (entry: Parameters<typeof calls.nights.append>[0]['entry']) =>
    calls.nights.append({ id: nightId, entry });
  const plan = await calls.nights.plan({ id: nightId });
  if (plan.heats === null) throw new Error(plan.reasons.join(' '));
  await append({ kind: 'plan', why: 'made', heats: plan.heats });
  await append({ kind: 'open' });
  const pads = [
    ['main-1', 'judge', '1'],
    ['main-2', 'judge', '2'],
    ['shadow-1', 'shadow', '1'],
    ['shadow-2', 'shadow', '2'],
    ['wall', 'board', null],
  ] as const;
  for (const [device, role, lane] of pads) await append({ kind: 'pad', device, name: device, role, lane });
  await append({ kind: 'heat-open', heat: 1 });
  const pad = (device: string) => createRouterClient(desk.padRouter, { context: { night: nightId, device } }).pad;
  return { desk, calls, append, pad, plan };
}

/** A set's log: go, calls at the times and of the kinds given ("." counted, "D" no-rep for depth), and a finish. */
export function logOf(set: string, pad: string, pattern: string, times: readonly number[], end: number): SetEvent[] {
  const base = { set, pad };
  const calls = Array.from(
    pattern,
    (mark, index): SetEvent => ({
      ...base,
      seq: index + 2,
      at: times[index] ?? 0,
      kind: 'call',
      verdict: mark === '.' ? 'counted' : 'no-rep',
      faults: mark === 'D' ? ['depth'] : mark === 'L' ? ['line'] : [],
    }),
  );
  const seq = pattern.length + 2;
  return [
    { ...base, seq: 1, at: 0, kind: 'go', wallClock: 1_790_000_000_000 },
    ...calls,
    { ...base, seq, at: end, kind: 'finish' },
  ];
}

export async function first<Item>(stream: AsyncIterable<Item>): Promise<Item> {
  for await (const item of stream) return item;
  throw new Error('the stream ended');
}
