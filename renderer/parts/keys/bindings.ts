import type { Settings } from '../../../shared-types/contract/settings.ts';
import { type Action, actions, defaultKeys, type FaultAction, faultActions } from './actions.ts';

/** Which action each key does, by KeyboardEvent.code. */
export type KeyMap = ReadonlyMap<string, Action>;

/** Keys that never do an action: the browser, the focus and the dialogs need them. */
const reserved = new Set([
  'Escape',
  'Tab',
  'ShiftLeft',
  'ShiftRight',
  'ControlLeft',
  'ControlRight',
  'AltLeft',
  'AltRight',
  'MetaLeft',
  'MetaRight',
  'CapsLock',
  'ContextMenu',
]);

export function isBindable(code: string): boolean {
  return code !== '' && code !== 'Unidentified' && !reserved.has(code);
}

/**
 * The key of a fault's initial, such as `KeyD` or `Digit2`.
 * @internal exported for its test, which asks it directly
 */
export function keyOfInitial(initial: string): string {
  return /^[0-9]$/.test(initial) ? `Digit${initial}` : `Key${initial.toUpperCase()}`;
}

/**
 * The keys of one action: the user's own where there are any, else the defaults. A fault keeps its initial's key besides,
 * since its place on the sheet differs from sheet to sheet. `initials` in the sheet's order.
 */
function keysOf(action: Action, own: Settings['keys'], initials: readonly string[]): readonly string[] {
  const bound = own[action];
  if (!isFault(action)) return bound ?? defaultKeys[action];
  const initial = initials[faultActions.indexOf(action)];
  const usual = initial === undefined ? [] : [keyOfInitial(initial)];
  return [...usual, ...(bound ?? []).filter((code) => !usual.includes(code))];
}

/**
 * The map for a sheet whose faults have these initials. What the user bound wins over every default; among defaults a
 * fault's initial wins over the other actions, since the sheet is what the judge has learnt.
 */
export function keyMap(own: Settings['keys'], initials: readonly string[]): KeyMap {
  const map = new Map<string, Action>();
  const take = (action: Action, codes: readonly string[]): void => {
    for (const code of codes) {
      if (isBindable(code) && !map.has(code)) map.set(code, action);
    }
  };
  const faults = faultActions.slice(0, initials.length);
  const present = [...faults, ...actions.filter((action) => !isFault(action))];
  for (const action of present) take(action, own[action] ?? []);
  for (const action of present) take(action, keysOf(action, own, initials));
  return map;
}

function isFault(action: Action): action is FaultAction {
  return (faultActions as readonly string[]).includes(action);
}

/** The keys that in fact do an action: those of its own that no other action holds. */
export function heldKeys(action: Action, own: Settings['keys'], initials: readonly string[]): readonly string[] {
  const map = keyMap(own, initials);
  return keysOf(action, own, initials).filter((code) => map.get(code) === action);
}

/** Gives a key to an action and takes it from the one that the user had given it to; four keys an action at most. */
export function bind(
  own: Settings['keys'],
  action: Action,
  code: string,
  initials: readonly string[],
): Settings['keys'] {
  const cleared = Object.fromEntries(
    Object.entries(own).map(([name, codes]) => [name, codes.filter((item) => item !== code)]),
  );
  const kept = storable(action, heldKeys(action, own, initials), initials).filter((item) => item !== code);
  return { ...cleared, [action]: [...kept, code].slice(-4) };
}

export function unbind(
  own: Settings['keys'],
  action: Action,
  code: string,
  initials: readonly string[],
): Settings['keys'] {
  const kept = storable(action, heldKeys(action, own, initials), initials).filter((item) => item !== code);
  return { ...own, [action]: kept };
}

/** What is kept of an action's keys: all, but for a fault's initial, which comes with the sheet. */
function storable(action: Action, keys: readonly string[], initials: readonly string[]): readonly string[] {
  return keys.filter((code) => !isInitialOf(action, code, initials));
}

/** Whether the key is the initial of the fault, and so cannot be taken off it. */
export function isInitialOf(action: Action, code: string, initials: readonly string[]): boolean {
  const initial = isFault(action) ? initials[faultActions.indexOf(action)] : undefined;
  return initial !== undefined && keyOfInitial(initial) === code;
}

/** What is printed on the key, as far as its place tells: "D", "Space", "Page Down". */
export function keyLabel(code: string): string {
  const letter = /^Key([A-Z])$/.exec(code)?.[1] ?? /^Digit([0-9])$/.exec(code)?.[1];
  if (letter !== undefined) return letter;
  const known = signs[code];
  if (known !== undefined) return known;
  return code.replace(/^Numpad(?=.)/, 'Numpad ').replace(/([a-z])([A-Z0-9])/g, '$1 $2');
}

const signs: Readonly<Record<string, string>> = {
  Period: '.',
  Comma: ',',
  Minus: '-',
  Equal: '=',
  Slash: '/',
  Backslash: '\\',
  Semicolon: ';',
  Quote: "'",
  BracketLeft: '[',
  BracketRight: ']',
  Backquote: '`',
  NumpadSubtract: 'Numpad -',
  NumpadAdd: 'Numpad +',
  NumpadDecimal: 'Numpad .',
  NumpadMultiply: 'Numpad *',
  NumpadDivide: 'Numpad /',
};
