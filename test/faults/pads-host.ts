// The desk with the pads' way in, to be killed: the real desk on its database with a night of one heat, and the real
// listener. It is told by messages what to do, and ends when its parent does.

import { createRouterClient } from '@orpc/server';
import { openDesk } from '../../main/desk/desk.ts';
import { createPads } from '../../main/hosts/pads.ts';
import { foldNight } from '../../shared-types/night/fold.ts';
import { arrangementOf, laneOf, personId, personOf } from '../night/rosters.ts';
import { night } from '../pads/pads-fixture.ts';

/** What the parent says: open the way in, give out a code, give a pad its lane. */
export type ToHost =
  | { readonly say: 'open'; readonly port: number }
  | { readonly say: 'code' }
  | { readonly say: 'put'; readonly device: string; readonly lane: string };
export type FromHost =
  | { readonly told: 'ready'; readonly open: boolean }
  | { readonly told: 'opened' }
  | { readonly told: 'code'; readonly code: string; readonly path: string }
  /** The pad has its lane, where this set is to be judged. */
  | { readonly told: 'put'; readonly set: string };

const [ledgerPath = '', screens = '', rememberedFile = '', lanes = '0'] = process.argv.slice(2);
const opened = await openDesk({ ledgerPath, host: 'browser', demo: false, version: '0.0.0' });
if (!opened.ok) throw new Error(opened.problem.message);
const { desk } = opened;
const calls = createRouterClient(desk.router, { context: {} });
if ((await calls.nights.list()).length === 0) await makeNight(Number(lanes));

const pads = createPads({ router: desk.padRouter, screens, rememberedFile, mostOfOneAddress: 512 });
await pads.resume();

/** A night with one heat, which is open: as many lanes, each with its athlete and its judge. */
async function makeNight(count: number): Promise<void> {
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  const people = numbers.flatMap((number) => [
    { ...personOf(number), judge: false },
    { ...personOf(1_000 + number), athlete: false },
  ]);
  for (const { id, athlete, judge } of people) {
    const rest = { nickname: '', notes: '', archivedAt: null, createdAt: 1 };
    await calls.people.save({ id, name: `Somebody ${id.slice(-4)}`, athlete, judge, ...rest });
  }
  const arrangement = arrangementOf({ lanes: numbers.map((number) => laneOf(String(number))), people });
  await calls.nights.create({ night: { id: night, name: 'A night', date: '2026-09-07', createdAt: 1 }, arrangement });
  const heat = numbers.map((number) => ({
    lane: String(number),
    station: 'throws',
    athlete: personId(number),
    judge: personId(1_000 + number),
    shadow: null,
  }));
  await calls.nights.append({ id: night, entry: { kind: 'plan', why: 'by-hand', heats: [heat] } });
  await calls.nights.append({ id: night, entry: { kind: 'open' } });
  await calls.nights.append({ id: night, entry: { kind: 'heat-open', heat: 1 } });
}

async function put(device: string, lane: string): Promise<string> {
  await calls.nights.append({ id: night, entry: { kind: 'pad', device, name: `pad ${lane}`, role: 'judge', lane } });
  const { events } = await calls.nights.get({ id: night });
  const [heat] = foldNight(night, events).heats;
  return heat?.lanes.find((one) => one.lane === lane)?.set ?? '';
}

function tell(message: FromHost): void {
  process.send?.(message);
}

process.on('message', (message: ToHost) => {
  switch (message.say) {
    case 'open':
      void pads.open(night, '127.0.0.1', message.port).then(() => tell({ told: 'opened' }));
      return;
    case 'code': {
      const made = pads.newCode();
      tell({ told: 'code', code: made?.code ?? '', path: new URL(made?.link ?? 'http://none/').pathname });
      return;
    }
    case 'put':
      void put(message.device, message.lane).then((set) => tell({ told: 'put', set }));
  }
});
process.on('disconnect', () => process.exit(0));
tell({ told: 'ready', open: pads.state().open !== null });
