import { useEffect, useEffectEvent } from 'react';
import { eventTime } from '../../../link/clock.ts';
import type { Action } from '../../../parts/keys/actions.ts';
import type { KeyMap } from '../../../parts/keys/bindings.ts';
import { type SpotName, spotNames } from '../places.ts';
import type { Viewpoint } from '../viewpoint.ts';

/** Keys that a focused button needs for itself. */
const pressing = new Set(['Space', 'Enter', 'NumpadEnter']);

function belongsElsewhere(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return true;
  const { target } = event;
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest('dialog, input, textarea, select, [contenteditable]') !== null) return true;
  return pressing.has(event.code) && target.closest('button, a, summary') !== null && target.matches(':focus-visible');
}

/** A step of the walk by the arrow keys and brackets; a key that is held down goes on. */
const steps: Readonly<Record<string, Partial<Viewpoint>>> = {
  ArrowLeft: { bearing: -5 },
  ArrowRight: { bearing: 5 },
  ArrowUp: { height: 0.08 },
  ArrowDown: { height: -0.08 },
  BracketLeft: { distance: -0.15 },
  BracketRight: { distance: 0.15 },
};

export interface RunKeys {
  /** @returns false where the action means nothing now: the key is left alone */
  readonly onAction: (action: Action, timeStamp: number) => boolean;
  /** Null where the place is fixed. */
  readonly onMove: ((by: Partial<Viewpoint>) => void) | null;
  readonly onSpot: ((name: SpotName) => void) | null;
}

/** The judge's keys as the user has bound them, and those for walking round, where no call has them. */
export function useRunKeys(keys: KeyMap, { onAction, onMove, onSpot }: RunKeys): void {
  const onKey = useEffectEvent((event: KeyboardEvent) => {
    if (belongsElsewhere(event)) return;
    const action = keys.get(event.code);
    if (action !== undefined) {
      if (event.repeat || onAction(action, eventTime(event))) event.preventDefault();
      return;
    }
    const step = steps[event.code];
    const spot = spotNames[Number(/^Digit([1-9])$/.exec(event.code)?.[1] ?? 0) - 1];
    if (step !== undefined && onMove !== null) onMove(step);
    else if (spot !== undefined && onSpot !== null) onSpot(spot);
    else return;
    event.preventDefault();
  });
  useEffect(() => {
    const listener = (event: KeyboardEvent): void => onKey(event);
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, []);
}
