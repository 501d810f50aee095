import type { SetEvent } from '../../shared-types/log/events.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import { compare } from './figures.ts';

const SET = '00000000-0000-4000-8000-000000000001';

/** A log of `length` events with no-reps, slips, reversals and breaks among them. */
function longLog(length: number): SetEvent[] {
  const log: SetEvent[] = [{ set: SET, pad: 'a', seq: 1, at: 0, kind: 'go', wallClock: 0 }];
  for (let seq = 2; seq <= length; seq += 1) {
    const head = { set: SET, pad: 'a', seq, at: seq * 900 };
    const of = { pad: 'a', seq: seq - 1 };
    if (seq % 10 === 3) log.push({ ...head, kind: 'call', verdict: 'no-rep', faults: ['depth'] });
    else if (seq % 50 === 21) log.push({ ...head, kind: 'break-start' });
    else if (seq % 50 === 22) log.push({ ...head, kind: 'break-end' });
    else if (seq % 40 === 35) log.push({ ...head, kind: 'slip', of });
    else if (seq % 60 === 46)
      log.push({ ...head, kind: 'reverse', of, verdict: 'no-rep', faults: [], by: null, reason: '' });
    else log.push({ ...head, kind: 'call', verdict: 'counted', faults: [] });
  }
  return log;
}

/** Folding a log of 1,000 events against parsing its JSON once. */
export function foldBench(): string[] {
  const log = longLog(1_000);
  const text = JSON.stringify(log);
  const folds: number[] = [];
  const parses: number[] = [];
  for (let round = 0; round < 300; round += 1) {
    let start = performance.now();
    const state = foldSet(SET, log);
    folds.push(performance.now() - start);
    if (state.clashes.length > 0) throw new Error('the log of the bench has clashes');
    start = performance.now();
    JSON.parse(text);
    parses.push(performance.now() - start);
  }
  return compare({ what: 'folding a log of 1,000 events', times: folds }, { what: 'parsing its JSON', times: parses });
}
