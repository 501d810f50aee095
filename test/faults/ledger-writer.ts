import { readFileSync, writeSync } from 'node:fs';
import { openLedger } from '../../main/ledger/open.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';

/**
 * A writer to be killed: appends batches of 1 to 5 calls to the set named, and says each batch's last number on its output
 * only once the ledger has answered.
 */
writeSync(1, 'loaded\n');
// Its parent starts it early, while another still holds the database, and names path, set and first number when it may begin.
const [path = '', set = '', from = '1'] = readFileSync(0, 'utf8').split('\n');
const opened = await openLedger(path);
if (opened.state !== 'open') throw new Error(opened.problems.join());
const { ledger } = opened;
writeSync(1, 'ready\n');

for (let seq = Number(from), batch = 0; ; batch += 1) {
  const size = 1 + (batch % 5);
  const events = Array.from({ length: size }, (_, index): SetEvent => {
    const own = seq + index;
    return own === 1
      ? { set, pad: 'pad-a', seq: own, at: 0, kind: 'go', wallClock: 1 }
      : { set, pad: 'pad-a', seq: own, at: own, kind: 'call', verdict: 'counted', faults: [] };
  });
  const outcomes = ledger.log.append(events);
  if (outcomes.some((item) => item.outcome !== 'new')) throw new Error('not new');
  seq += size;
  writeSync(1, `${seq - 1} acknowledged\n`);
}
