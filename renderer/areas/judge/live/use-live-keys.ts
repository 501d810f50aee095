import { useEffect, useEffectEvent } from 'react';
import { eventTime } from '../../../link/clock.ts';
import type { Action } from '../../../parts/keys/actions.ts';
import type { KeyMap } from '../../../parts/keys/bindings.ts';

/** Keys that a focused button needs for itself. */
const pressing = new Set(['Space', 'Enter', 'NumpadEnter']);

/** Whether the key belongs to what has the focus: a text field always, a button that was reached by Tab when it is pressed. */
function belongsElsewhere(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return true;
  const { target } = event;
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest('dialog, input, textarea, select, [contenteditable]') !== null) return true;
  return pressing.has(event.code) && target.closest('button, a, summary') !== null && target.matches(':focus-visible');
}

/** The bound keys of a running set, wherever the focus is. A key that is held down is one press. */
export function useLiveKeys(
  keys: KeyMap,
  active: boolean,
  onAction: (action: Action, timeStamp: number, shift: boolean) => void,
): void {
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    const action = keys.get(event.code);
    if (action === undefined || belongsElsewhere(event)) return;
    // Neither scrolls the page nor presses a button that the mouse had left the focus on.
    event.preventDefault();
    if (!event.repeat) onAction(action, eventTime(event), event.shiftKey);
  });
  useEffect(() => {
    if (!active) return;
    const listener = (event: KeyboardEvent): void => onKey(event);
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, [active]);
}
