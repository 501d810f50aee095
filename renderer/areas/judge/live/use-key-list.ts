import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { type Action, calls, faultAction } from '../../../parts/keys/actions.ts';
import { heldKeys } from '../../../parts/keys/bindings.ts';
import { useKeyLabels } from '../../../parts/keys/use-key-labels.ts';
import { useWords } from '../../../parts/words/words.tsx';

/** The bound keys of a sheet's screen, each action with its keys as printed on the board. */
export function useKeyList(sheet: StandardSheet): readonly { readonly name: string; readonly keys: string }[] {
  const words = useWords().judge.live;
  const { settings } = useSettings();
  const keyLabel = useKeyLabels();
  const initials = sheet.faults.map((fault) => fault.initial);
  const names: Readonly<Record<(typeof calls)[number], string>> = {
    count: words.counted,
    caution: words.caution,
    'no-rep-later': words.noRepLater,
    'last-was-no-rep': words.lastNoRep,
    slip: words.slip,
    break: words.breakStart,
    mark: words.nextMark,
  };
  const entry = (name: string, action: Action) => ({
    name,
    keys: heldKeys(action, settings.keys, initials).map(keyLabel).join(' / '),
  });
  const ofCalls = calls
    .filter((call) => call !== 'mark' || sheet.markEveryM !== null)
    .map((call) => entry(names[call], call));
  const ofFaults = sheet.faults.flatMap((fault, index) => {
    const action = faultAction(index);
    return action === null ? [] : [entry(fault.name, action)];
  });
  return [...ofCalls, ...ofFaults].filter((item) => item.keys !== '');
}
