import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Action,
  actions,
  calls,
  deeds,
  defaultKeys,
  faultAction,
  faultIndex,
} from '../../renderer/parts/keys/actions.ts';
import {
  bind,
  heldKeys,
  isBindable,
  keyLabel,
  keyMap,
  keyOfInitial,
  unbind,
} from '../../renderer/parts/keys/bindings.ts';
import { settings } from '../../shared-types/contract/settings.ts';
import { shippedSheets } from '../../shared-types/sheets/shipped.ts';

const initials = ['L', 'A', 'T', 'D', 'B'];
const anAction = fc.constantFrom(...actions.slice(0, calls.length + deeds.length + initials.length));
const aCode = fc.constantFrom('Space', 'Enter', 'KeyD', 'KeyL', 'KeyQ', 'PageUp', 'PageDown', 'F2', 'Comma', 'Digit7');
const bindings = fc
  .array(fc.tuple(anAction, aCode), { maxLength: 12 })
  .map((pairs) => pairs.reduce((own, [action, code]) => bind(own, action, code, initials), {}));

describe('the usual keys', () => {
  test.each(shippedSheets.map((sheet) => [sheet.station, sheet] as const))(
    '%s: all that has a usual key keeps one',
    (_name, sheet) => {
      const letters = sheet.faults.map((fault) => fault.initial);
      for (const action of [...calls, ...deeds]) {
        if (defaultKeys[action].length > 0) expect(heldKeys(action, {}, letters), action).not.toEqual([]);
      }
      const map = keyMap({}, letters);
      sheet.faults.forEach((fault, index) => {
        expect(map.get(keyOfInitial(fault.initial))).toBe(faultAction(index));
      });
    },
  );

  test('Space and Enter count, and the clicker’s keys are free', () => {
    const map = keyMap({}, initials);
    expect([map.get('Space'), map.get('Enter')]).toEqual(['count', 'count']);
    expect([map.get('PageUp'), map.get('PageDown')]).toEqual([undefined, undefined]);
  });

  test('a set is never abandoned by a key that nobody bound', () => {
    expect(heldKeys('abandon', {}, initials)).toEqual([]);
  });
});

describe('binding', () => {
  test('the key does what it was last bound to, whatever was bound before', () => {
    fc.assert(
      fc.property(bindings, anAction, aCode, (own, action, code) => {
        expect(keyMap(bind(own, action, code, initials), initials).get(code)).toBe(action);
      }),
    );
  });

  test('an unbound key no longer does it, but for the fault’s own letter', () => {
    fc.assert(
      fc.property(bindings, anAction, aCode, (own, action, code) => {
        const after = keyMap(unbind(bind(own, action, code, initials), action, code, initials), initials);
        const index = faultIndex(action);
        const isOwnLetter = index !== null && keyOfInitial(initials[index] ?? '') === code;
        if (!isOwnLetter) expect(after.get(code)).not.toBe(action);
      }),
    );
  });

  test('the desk can always store it', () => {
    fc.assert(
      fc.property(bindings, (own) => {
        expect(settings.shape.keys.safeParse(own).success).toBe(true);
      }),
    );
  });

  test('what an action holds, the map gives to it and to no other', () => {
    fc.assert(
      fc.property(bindings, (own) => {
        const map = keyMap(own, initials);
        const held = actions.flatMap((action) =>
          heldKeys(action, own, initials).map((code) => [code, action] as const),
        );
        expect(new Map<string, Action>(held)).toEqual(map);
        expect(held.length).toBe(map.size);
      }),
    );
  });

  test('a fault keeps its letter on every sheet after a clicker was bound to it', () => {
    const own = bind({}, 'fault-1', 'PageUp', initials);
    expect(own).toEqual({ 'fault-1': ['PageUp'] });
    expect(keyMap(own, ['C', 'H']).get('KeyC')).toBe('fault-1');
    expect(keyMap(own, ['C', 'H']).get('PageUp')).toBe('fault-1');
  });

  test('keys that the browser or a dialog needs are refused', () => {
    expect(['Escape', 'Tab', 'ShiftLeft', 'MetaRight', '', 'Unidentified'].filter(isBindable)).toEqual([]);
    expect(keyMap({ count: ['Escape'] }, []).get('Escape')).toBeUndefined();
  });
});

test('keys are called what stands on them', () => {
  const codes = ['KeyD', 'Digit0', 'PageDown', 'NumpadEnter', 'Comma', 'Space', 'F1'];
  expect(codes.map(keyLabel)).toEqual(['D', '0', 'Page Down', 'Numpad Enter', ',', 'Space', 'F1']);
});
