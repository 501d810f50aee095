import type { SetEvent, Verdict } from '../../shared-types/log/events.ts';
import { SET } from '../log/arbitrary.ts';

/**
 * A log in shorthand, one word an event, its time in ms first: `1000+` counted, `1000-depth` no-rep (faults joined by
 * commas, none for unexplained), `1000!aim` caution, `1000(` break start, `1000)` break end, `1000m10` mark at 10 m,
 * `1000.` finish, `1000x` abandon, `1000s3` slip of event 3, `1000r3+` / `1000r3-line` reversal of event 3. Event 1 is go.
 */
export function logOf(words: string): SetEvent[] {
  const head = { set: SET, pad: 'a' };
  const events: SetEvent[] = [{ ...head, seq: 1, at: 0, kind: 'go', wallClock: 1_700_000_000_000 }];
  for (const word of words.split(/\s+/).filter(Boolean)) {
    const match = /^(\d+)([+\-!().mxsr])(.*)$/.exec(word);
    if (match === null) throw new Error(`not an event: ${word}`);
    const [, at, sign, rest = ''] = match;
    const base = { ...head, seq: events.length + 1, at: Number(at) };
    events.push({ ...base, ...bodyOf(sign ?? '', rest) } as SetEvent);
  }
  return events;
}

function bodyOf(sign: string, rest: string): object {
  switch (sign) {
    case '(':
      return { kind: 'break-start' };
    case ')':
      return { kind: 'break-end' };
    case 'm':
      return { kind: 'mark', metres: Number(rest) };
    case '.':
      return { kind: 'finish' };
    case 'x':
      return { kind: 'abandon', reason: '' };
    case 's':
      return { kind: 'slip', of: { pad: 'a', seq: Number(rest) } };
    case 'r': {
      const [, seq, verdictSign = '', faults = ''] = /^(\d+)([+\-!])(.*)$/.exec(rest) ?? [];
      return {
        kind: 'reverse',
        of: { pad: 'a', seq: Number(seq) },
        ...judged(verdictSign, faults),
        by: null,
        reason: '',
      };
    }
    default:
      return { kind: 'call', ...judged(sign, rest) };
  }
}

function judged(sign: string, faults: string): { verdict: Verdict; faults: string[] } {
  const verdict = sign === '+' ? 'counted' : sign === '-' ? 'no-rep' : 'caution';
  return { verdict, faults: faults.split(',').filter(Boolean) };
}
