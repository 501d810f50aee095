import type { Verdict } from '../../../shared-types/log/events.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { useFormats, useWords } from '../../parts/words/words.tsx';

interface Called {
  readonly verdict: Verdict;
  readonly faults: readonly string[];
}

/** The name of a fault on a sheet; its code where the sheet does not know it. */
export function faultName(sheet: Pick<StandardSheet, 'faults'>, code: string): string {
  return sheet.faults.find((fault) => fault.code === code)?.name ?? code;
}

/** A call in words: "no-rep, Not deep enough". */
export function useCallText(sheet: Pick<StandardSheet, 'faults'>): (call: Called) => string {
  const words = useWords().eye.drill.say;
  const { list } = useFormats();
  return ({ verdict, faults }) => {
    if (verdict === 'counted') return words.counted;
    if (verdict === 'caution') return words.caution;
    return faults.length === 0 ? words.noRep : words.noRepFor(list(faults.map((code) => faultName(sheet, code))));
  };
}
