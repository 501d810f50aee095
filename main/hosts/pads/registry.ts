import { randomBytes, randomUUID } from 'node:crypto';
import { digest, newSecret } from '../browser/secrets.ts';
import { type RememberedPad, type RememberedPads, readPads, writePads } from './remembered.ts';

/** More than any gym has phones; a further one is refused in words. */
const mostPads = 200;

/** Which pads have joined; every change is on the disk when it returns. */
export interface PadRegistry {
  readonly base: string;
  readonly port: () => number | null;
  readonly night: () => string | null;
  readonly openedAt: () => RememberedPads['open'];
  /** Notes what is open; pads of another night are forgotten. */
  readonly noteOpen: (night: string, port: number, open: NonNullable<RememberedPads['open']>) => void;
  readonly noteClosed: () => void;
  readonly all: () => readonly RememberedPad[];
  /** A new pad and its secret, which is held nowhere else; null where there are too many. */
  readonly join: (callsItself: string, from: string, at: number) => { pad: RememberedPad; secret: string } | null;
  readonly bySecret: (secret: string | undefined) => RememberedPad | null;
  /** False where there is no such pad. */
  readonly forget: (id: string) => boolean;
}

export function createRegistry(file: string): PadRegistry {
  let state: RememberedPads = readPads(file) ?? {
    base: randomBytes(16).toString('base64url'),
    port: null,
    night: null,
    pads: [],
    open: null,
  };

  function change(part: Partial<RememberedPads>): void {
    const next = { ...state, ...part };
    // On the disk first: a change that could not be kept has not happened.
    writePads(file, next);
    state = next;
  }

  return {
    base: state.base,
    port: () => state.port,
    night: () => state.night,
    openedAt: () => state.open,
    noteOpen: (night, port, open) => change({ night, port, open, pads: night === state.night ? state.pads : [] }),
    noteClosed: () => {
      if (state.open !== null) change({ open: null });
    },
    all: () => state.pads,
    join: (callsItself, from, at) => {
      if (state.pads.length >= mostPads) return null;
      const secret = newSecret();
      const pad: RememberedPad = { id: randomUUID(), digest: digest(secret), callsItself, joinedAt: at, from };
      change({ pads: [...state.pads, pad] });
      return { pad, secret };
    },
    bySecret: (secret) => {
      if (secret === undefined) return null;
      const asked = digest(secret);
      return state.pads.find((pad) => pad.digest === asked) ?? null;
    },
    forget: (id) => {
      if (!state.pads.some((pad) => pad.id === id)) return false;
      change({ pads: state.pads.filter((pad) => pad.id !== id) });
      return true;
    },
  };
}
