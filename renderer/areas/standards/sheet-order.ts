import type { Fault } from '../../../shared-types/sheets/sheet.ts';

/** Faults from overhead to the floor, as the eye goes down the body; the sheet's own order among equals. */
export function byHeight(faults: readonly Fault[]): readonly Fault[] {
  return faults.toSorted((one, other) => other.bodyHeight - one.bodyHeight);
}
