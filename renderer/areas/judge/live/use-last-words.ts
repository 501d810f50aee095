import type { SetEvent } from '../../../../shared-types/log/events.ts';
import type { SetState } from '../../../../shared-types/log/state.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { type LastDone, lastDone } from './last-done.ts';

/** What the last line of the log says, in words. */
export function useLastWords(): (log: readonly SetEvent[], state: SetState, sheet: StandardSheet) => string {
  const words = useWords().judge.live;
  return (log, state, sheet) => {
    const done = lastDone(log, state);
    if (done === null) return '';
    const named = (code: string | null): string =>
      code === null ? '' : (sheet.faults.find((fault) => fault.code === code)?.name ?? code);
    return sayLast(done, words, named);
  };
}

type LiveWords = ReturnType<typeof useWords>['judge']['live'];

function sayLast(done: LastDone, words: LiveWords, named: (code: string | null) => string): string {
  switch (done.kind) {
    case 'go':
      return words.last.start;
    case 'counted':
      return words.last.counted(done.count, done.cycleS);
    case 'caution':
      return words.last.caution(done.count, named(done.fault));
    case 'no-rep':
      return words.last.noRep(named(done.fault));
    case 'explained':
      return words.last.explained(done.attempt, named(done.fault));
    case 'reversed':
      return words.last.reversed(done.attempt);
    case 'mark':
      return words.last.mark(done.metres);
    case 'withdrawn':
      return words.last.withdrawn(what(done.what, words));
    case 'put-back':
      return words.last.putBack(what(done.what, words));
    case 'break-start':
      return words.last.breakStart;
    case 'break-end':
      return words.last.breakEnd;
    case 'finish':
      return words.last.finish;
    case 'abandon':
      return words.last.abandon;
    case 'other':
      return words.last.other;
  }
}

function what(event: SetEvent, words: LiveWords): string {
  return words.what[event.kind === 'call' ? event.verdict : event.kind];
}
