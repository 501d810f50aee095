import {
  FAULTS,
  type FaultCode,
  type MovementName,
  type SheetNumbers,
  USUAL_NUMBERS,
  unitOf,
} from '../motion/specification.ts';
import type { StandardSheet } from '../sheets/sheet.ts';
import type { Drill } from './drill.ts';

/**
 * What a sheet fixes for the figure: heights in metres from `heightM` (the first usual one if null), tolerances from the
 * sheet's margins where sheet and figure measure in the same unit; the rest as usual.
 */
export function numbersOf(sheet: StandardSheet, heightM: number | null): Drill['numbers'] {
  const height = heightM ?? sheet.heightsM[0] ?? null;
  const movement = shownMovement(sheet);
  const tolerance: Partial<Record<FaultCode, number>> = {};
  for (const code of movement === null ? [] : shownFaults(sheet)) {
    const margin = sheet.faults.find((fault) => fault.code === code)?.margin;
    if (movement !== null && margin && margin.unit === unitOf(movement, code)) tolerance[code] = margin.tolerance;
  }
  const numbers: SheetNumbers = { ...USUAL_NUMBERS };
  return {
    ...numbers,
    ...(movement === 'wall-throw' && height !== null ? { lineHeight: height } : {}),
    ...(movement === 'box-jump-over' && height !== null ? { boxHeight: height } : {}),
    tallAsked: sheet.faults.some((fault) => fault.code === 'tall'),
    tolerance,
  };
}

/** The movement that a figure can show for this sheet; null for a gym's own movements. */
export function shownMovement(sheet: Pick<StandardSheet, 'movement'>): MovementName | null {
  return sheet.movement === 'other' ? null : sheet.movement;
}

/** The faults that are on the sheet and that the figure can show, in the sheet's order. */
export function shownFaults(sheet: Pick<StandardSheet, 'movement' | 'faults'>): FaultCode[] {
  const movement = shownMovement(sheet);
  if (movement === null) return [];
  const known: readonly FaultCode[] = FAULTS[movement];
  return sheet.faults.flatMap(({ code }) => known.filter((shown) => shown === code));
}
