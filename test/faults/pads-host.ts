// The desk with the pads' way in, to be killed: the real database, the real listener, and pads' answers over both. It is
// told by messages what to do, and ends when its parent does.

import { openDesk } from '../../main/desk/desk.ts';
import { createPads } from '../../main/hosts/pads.ts';
import { somebody, someSetup } from '../hosts/memory-desk.ts';
import { padDesk, setOf } from '../pads/pad-desk.ts';
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
  | { readonly told: 'put' };

const [ledgerPath = '', screens = '', rememberedFile = '', lanes = '0'] = process.argv.slice(2);
const opened = await openDesk({ ledgerPath, host: 'browser', demo: false, version: '0.0.0' });
if (!opened.ok) throw new Error(opened.problem.message);
const { ledger } = opened.desk;
if (ledger.people.list().length === 0) ledger.people.create(somebody);
for (let lane = 1; lane <= Number(lanes); lane += 1) ledger.sets.create(someSetup(setOf(String(lane))));

const answers = padDesk(
  (events) => {
    const outcomes = ledger.log.append(events);
    return events.map(({ pad, seq }, index) => ({ pad, seq, outcome: outcomes[index]?.outcome ?? 'conflict' }));
  },
  (set) => ledger.log.events(set),
);
const pads = createPads({ router: answers.router, screens, rememberedFile, mostOfOneAddress: 512 });
await pads.resume();

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
      answers.put(message.device, 'judge', message.lane);
      tell({ told: 'put' });
  }
});
process.on('disconnect', () => process.exit(0));
tell({ told: 'ready', open: pads.state().open !== null });
