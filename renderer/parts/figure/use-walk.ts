import { type KeyboardEvent, useId, useState } from 'react';

/** Where a key leads among `count` things, from `place` (-1: none yet); null where the key leads nowhere. */
export function stepTo(key: string, place: number, count: number): number | null {
  if (count === 0) return null;
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return Math.min(count - 1, place + 1);
    case 'ArrowLeft':
    case 'ArrowUp':
      return place === -1 ? count - 1 : Math.max(0, place - 1);
    case 'PageDown':
      return Math.min(count - 1, place + 10);
    case 'PageUp':
      return Math.max(0, place - 10);
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}

export interface Walk {
  /** The thing under the pointer or the keyboard's place; -1 where there is none. */
  readonly place: number;
  readonly setPlace: (place: number) => void;
  /** For the element that holds the things: it takes the focus and the keys. */
  readonly list: {
    readonly role: 'listbox';
    readonly tabIndex: 0;
    readonly 'aria-activedescendant': string | undefined;
    readonly onKeyDown: (event: KeyboardEvent) => void;
    readonly onBlur: () => void;
    readonly onPointerLeave: () => void;
  };
  readonly option: (index: number) => {
    readonly id: string;
    readonly role: 'option';
    readonly 'aria-selected': boolean;
  };
}

/** Goes through the marks of a drawing by keyboard: one stop of the Tab key, arrows inside. Enter picks. */
export function useWalk(count: number, onPick?: (index: number) => void): Walk {
  const id = useId();
  const [held, setPlace] = useState(-1);
  const place = Math.min(held, count - 1);
  return {
    place,
    setPlace,
    list: {
      role: 'listbox',
      tabIndex: 0,
      'aria-activedescendant': place === -1 ? undefined : `${id}-${place}`,
      onKeyDown: (event) => {
        if (event.altKey || event.ctrlKey || event.metaKey) return;
        const next = stepTo(event.key, place, count);
        if (next !== null) {
          event.preventDefault();
          setPlace(next);
        } else if ((event.key === 'Enter' || event.key === ' ') && place !== -1 && onPick !== undefined) {
          event.preventDefault();
          onPick(place);
        }
      },
      onBlur: () => setPlace(-1),
      onPointerLeave: () => setPlace(-1),
    },
    option: (index) => ({ id: `${id}-${index}`, role: 'option', 'aria-selected': index === place }),
  };
}
