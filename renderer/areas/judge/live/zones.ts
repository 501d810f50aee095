import type { Fault } from '../../../../shared-types/sheets/sheet.ts';

/** One fault's button and the height at which its leader line meets the figure. */
export interface Zone {
  readonly fault: Fault;
  /** 0-based row from the top. */
  readonly row: number;
  /** 0-based column; a second one only where a single column would make the buttons too low for a thumb. */
  readonly column: number;
  /** Height on the figure: 1 overhead, 0 on the floor. */
  readonly bodyHeight: number;
}

/** Faults from high to low as the body breaks them, in one column, or side by side where they are many. */
export function faultZones(faults: readonly Fault[], longestColumn = 6): readonly Zone[] {
  const order = faults.toSorted((one, other) => other.bodyHeight - one.bodyHeight);
  const columns = order.length > longestColumn ? 2 : 1;
  return order.map((fault, index) => ({
    fault,
    row: Math.floor(index / columns),
    column: index % columns,
    bodyHeight: fault.bodyHeight,
  }));
}
