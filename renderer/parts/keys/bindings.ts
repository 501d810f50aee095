import type { Settings } from '../../../shared-types/contract/settings.ts';
import { type Action, actions, defaultKeys, faultActions, isAction } from './actions.ts';

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

/** The key of a fault's initial, such as `KeyD` or `Digit2`. */
export function keyOfInitial(initial: string): string {
  return /^[0-9]$/.test(initial) ? `Digit${initial}` : `Key${initial.toUpperCase()}`;
}

/** The keys of one action: the user's own where there are any, else the defaults. `initials` in the sheet's order. */
export function keysOf(action: Action, own: Settings['keys'], initials: readonly string[]): readonly string[] {
  const bound = own[action];
  if (bound !== undefined) return bound;
  const fault = (faultActions as readonly string[]).indexOf(action);
  if (fault === -1) return defaultKeys[action as keyof typeof defaultKeys];
  const initial = initials[fault];
  return initial === undefined ? [] : [keyOfInitial(initial)];
}

/**
 * The map for a sheet whose faults have these initials. What the user bound wins over every default; among defaults a
 * fault's initial wins over the other actions, since the sheet is what the judge has learnt.
 */
export function keyMap(own: Settings['keys'], initials: readonly string[]): KeyMap {
  const map = new Map<string, Action>();
  const faultsFirst = [...faultActions.slice(0, initials.length), ...actions.filter((action) => !isFault(action))];
  const bound = faultsFirst.filter((action) => own[action] !== undefined);
  const unbound = faultsFirst.filter((action) => own[action] === undefined);
  for (const action of [...bound, ...unbound]) {
    for (const code of keysOf(action, own, initials)) {
      if (isBindable(code) && !map.has(code)) map.set(code, action);
    }
  }
  return map;
}

function isFault(action: Action): boolean {
  return (faultActions as readonly string[]).includes(action);
}

/** Which actions the user has already given this key to, apart from one. */
export function othersWithKey(code: string, own: Settings['keys'], except: Action): readonly Action[] {
  return Object.entries(own).flatMap(([name, codes]) =>
    isAction(name) && name !== except && codes.includes(code) ? [name] : [],
  );
}

/** Gives a key to an action and takes it from any other that the user had given it to; four keys an action at most. */
export function bind(
  own: Settings['keys'],
  action: Action,
  code: string,
  present: readonly string[],
): Settings['keys'] {
  const cleared = Object.fromEntries(
    Object.entries(own).map(([name, codes]) => [name, codes.filter((item) => item !== code)]),
  );
  const keys = [...present.filter((item) => item !== code), code].slice(-4);
  return { ...cleared, [action]: keys };
}

export function unbind(
  own: Settings['keys'],
  action: Action,
  code: string,
  present: readonly string[],
): Settings['keys'] {
  return { ...own, [action]: present.filter((item) => item !== code) };
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
