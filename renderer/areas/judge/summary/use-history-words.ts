import type { Verdict } from '../../../../shared-types/log/events.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import type { HistoryLine } from './history.ts';

/** Says a line of the log. `nameOf` a person's id, empty for nobody. */
export function useHistoryWords(
  sheet: Pick<StandardSheet, 'faults'>,
  nameOf: (id: string | null) => string,
): (line: HistoryLine) => string {
  const { history, reached } = useWords().judge.finished;
  const { what } = useWords().judge.live;
  const { dateTime, list } = useFormats();
  const { say } = history;
  const named = (codes: readonly string[]): string =>
    list(codes.map((code) => sheet.faults.find((fault) => fault.code === code)?.name ?? code));
  const verdict = (value: Verdict): string => say.verdicts[value];
  const about = ({ target, attempt }: HistoryLine): string => {
    if (target === null) return say.attempt(null);
    return target.kind === 'call' ? say.attempt(attempt) : what[target.kind];
  };
  return (line) => {
    const { event, attempt } = line;
    switch (event.kind) {
      case 'go':
        return say.go(dateTime(event.wallClock));
      case 'call':
        return say.call(attempt, verdict(event.verdict), named(event.faults));
      case 'explain':
        return say.explain(about(line), named(event.faults));
      case 'reverse':
        return say.reverse(about(line), verdict(event.verdict), named(event.faults), nameOf(event.by), event.reason);
      case 'slip':
        return line.restores ? say.unslip(about(line)) : say.slip(about(line));
      case 'break-start':
        return say.breakStart;
      case 'break-end':
        return say.breakEnd;
      case 'mark':
        return say.mark(reached(event.metres));
      case 'finish':
        return say.finish;
      case 'abandon':
        return say.abandon(event.reason);
      case 'sign-off':
        return say.signOff(event.name);
      case 'appeal': {
        const by = nameOf(event.by);
        if (event.outcome === 'open') return say.appealOpen(about(line), event.reason);
        if (event.outcome === 'upheld') return say.appealUpheld(about(line), by);
        return say.appealRefused(about(line), by, event.reason);
      }
    }
  };
}
