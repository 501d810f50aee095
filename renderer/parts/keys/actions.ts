/**
 * What a key can do on the Judge screen. Keys are KeyboardEvent.code values: the place on the board, whatever its
 * layout. A presentation clicker or a pedal sends ordinary keys, often PageUp and PageDown, which are left free for it.
 */
export const calls = ['count', 'caution', 'no-rep-later', 'last-was-no-rep', 'slip', 'break', 'mark'] as const;
export const deeds = ['finish', 'abandon', 'help'] as const;
export const faultActions = [
  'fault-1',
  'fault-2',
  'fault-3',
  'fault-4',
  'fault-5',
  'fault-6',
  'fault-7',
  'fault-8',
  'fault-9',
  'fault-10',
  'fault-11',
  'fault-12',
] as const;

export type Call = (typeof calls)[number];
export type Deed = (typeof deeds)[number];
/** The n-th fault of the sheet, in the order in which the sheet lists them. */
export type FaultAction = (typeof faultActions)[number];
export type Action = Call | Deed | FaultAction;

export const actions: readonly Action[] = [...calls, ...deeds, ...faultActions];

/** Keys that do an action unless the user binds others. Faults have their initial's key instead, see `bindings`. */
export const defaultKeys: Readonly<Record<Call | Deed, readonly string[]>> = {
  count: ['Space', 'Enter', 'NumpadEnter'],
  caution: ['Period', 'NumpadDecimal'],
  'no-rep-later': ['Numpad0', 'Digit0'],
  'last-was-no-rep': ['Minus', 'NumpadSubtract'],
  slip: ['Backspace', 'Delete'],
  break: ['Comma'],
  mark: ['Equal', 'NumpadAdd'],
  finish: ['End'],
  abandon: [],
  help: ['F1'],
};

/** The order of a fault on its sheet, from 0; null where the action is no fault. */
export function faultIndex(action: Action): number | null {
  const index = faultActions.indexOf(action as FaultAction);
  return index === -1 ? null : index;
}

export function faultAction(index: number): FaultAction | null {
  return faultActions[index] ?? null;
}
