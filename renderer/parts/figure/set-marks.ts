import type { Range } from './axis.ts';

/** The attempts of one set: a character an attempt ("." counted, "!" with caution, else a no-rep), and each one's cycle. */
export interface MarkRow {
  readonly marks: string;
  /** Seconds; null where a cycle tells nothing. */
  readonly cyclesS: readonly (number | null)[];
}

/** Where the attempts of all rows stand, CSS pixels: one slot an attempt, the same in every row. */
export interface Slots {
  readonly left: number;
  readonly slot: number;
}

const widestSlot = 9;
/** A typical cycle fills this share of the row. */
const usual = 0.5;
const lowest = 0.18;

export function slotsOf(rows: readonly MarkRow[], [left, right]: Range): Slots {
  const most = rows.reduce((longest, row) => Math.max(longest, row.marks.length), 1);
  return { left, slot: Math.min(widestSlot, (right - left) / most) };
}

/** Which attempt of a row lies at a place; -1 beyond its ends. */
export function slotAt(row: MarkRow, { left, slot }: Slots, x: number): number {
  const index = Math.floor((x - left) / slot);
  return index >= 0 && index < row.marks.length ? index : -1;
}

export function slotMiddle({ left, slot }: Slots, index: number): number {
  return left + (index + 0.5) * slot;
}

/** Round numbers of attempts for an axis that ends at `most`: five or so. */
export function roundAttempts(most: number): readonly number[] {
  const power = 10 ** Math.max(0, Math.floor(Math.log10(most / 2)));
  const step = [1, 2, 5, 10].map((times) => times * power).find((size) => most / size <= 6) ?? most;
  return Array.from({ length: Math.floor(most / step) }, (_, index) => (index + 1) * step);
}

/** Two paths for any number of attempts: the filled bars of those that counted, the open notches of those that did not. */
export function markPaths(
  rows: readonly MarkRow[],
  slots: Slots,
  { topOf, rowHeight }: { readonly topOf: (row: number) => number; readonly rowHeight: number },
): { readonly counted: string; readonly noReps: string } {
  const typical = typicalCycle(rows);
  const wide = Math.max(slots.slot * 0.68, slots.slot - 1.6);
  const counted: string[] = [];
  const noReps: string[] = [];
  for (const [index, row] of rows.entries()) {
    const base = topOf(index) + rowHeight;
    for (let place = 0; place < row.marks.length; place += 1) {
      const share = (usual * (row.cyclesS[place] ?? typical)) / typical;
      const tall = Math.min(1, Math.max(lowest, share)) * rowHeight;
      const x = slots.left + place * slots.slot + (slots.slot - wide) / 2;
      const sign = row.marks[place];
      if (sign === '.') counted.push(bar(x, base, wide, tall));
      else if (sign === '!') {
        // A head cut off and set above the bar, as in the ribbon.
        const head = Math.min(3, tall * 0.3);
        counted.push(bar(x, base, wide, tall - head - 1), bar(x, base - tall + head, wide, head));
      } else noReps.push(notch(x, base, wide, Math.max(tall, rowHeight * 0.45)));
    }
  }
  return { counted: counted.join(''), noReps: noReps.join('') };
}

function bar(x: number, base: number, wide: number, tall: number): string {
  return `M${round(x)} ${round(base)}v${round(-tall)}h${round(wide)}v${round(tall)}Z`;
}

function notch(x: number, base: number, wide: number, tall: number): string {
  const dip = Math.min(tall * 0.5, Math.max(3, wide));
  return `M${round(x)} ${round(base)}v${round(-tall)}l${round(wide / 2)} ${round(dip)}l${round(wide / 2)} ${round(-dip)}v${round(tall)}`;
}

/** Median of all cycles, seconds; 1 where there is none. */
function typicalCycle(rows: readonly MarkRow[]): number {
  const cycles = rows.flatMap((row) => row.cyclesS.filter((cycle) => cycle !== null)).toSorted((a, b) => a - b);
  return Math.max(0.001, cycles[Math.floor(cycles.length / 2)] ?? 1);
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
