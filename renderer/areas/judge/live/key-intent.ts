import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { type Action, faultIndex } from '../../../parts/keys/actions.ts';
import type { Intent } from './decide.ts';

/** What a key asks for: a press of the log, or something of the screen. */
export type KeyWish =
  | Intent
  | { readonly kind: 'ask-finish' }
  | { readonly kind: 'ask-abandon' }
  | { readonly kind: 'ask-menu' };

export interface KeyContext {
  readonly sheet: Pick<StandardSheet, 'faults'>;
  /** Metres of the next mark, null where the sheet counts none. */
  readonly nextMark: number | null;
  /** With Shift a fault's key names the fault of the call before instead of calling a new no-rep. */
  readonly shift: boolean;
}

/** Null where the action means nothing on this sheet. */
export function keyWish(action: Action, { sheet, nextMark, shift }: KeyContext): KeyWish | null {
  const index = faultIndex(action);
  if (index !== null) {
    const fault = sheet.faults[index];
    if (fault === undefined) return null;
    return shift ? { kind: 'explain', fault: fault.code } : { kind: 'no-rep', faults: [fault.code] };
  }
  switch (action) {
    case 'count':
    case 'caution':
    case 'last-was-no-rep':
    case 'break':
      return { kind: action };
    case 'no-rep-later':
      return { kind: 'no-rep', faults: [] };
    case 'slip':
      return { kind: shift ? 'put-back' : 'slip' };
    case 'mark':
      return nextMark === null ? null : { kind: 'mark', metres: nextMark };
    case 'finish':
      return { kind: 'ask-finish' };
    case 'abandon':
      return { kind: 'ask-abandon' };
    case 'help':
      return { kind: 'ask-menu' };
    default:
      return null;
  }
}
