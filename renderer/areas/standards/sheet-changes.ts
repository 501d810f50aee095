import type { Fault, StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import type { Words } from '../../parts/words/words.tsx';

/** One difference between two versions; `before` or `after` is null where there was, or is, nothing. */
export interface SheetChange {
  readonly where: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** Writes a value as the sheet shows it; null where there is nothing to show. */
type Write<T> = (value: T) => string | null;

const text: Write<string> = (value) => (value === '' ? null : value);
const lines: Write<readonly string[]> = (value) => (value.length === 0 ? null : value.join('\n'));

/** What changed from one version of a sheet to a later one, in the order in which the sheet is read. */
export function sheetChanges(before: StandardSheet, after: StandardSheet, words: Words['standards']): SheetChange[] {
  const { fields } = words;
  const changes: SheetChange[] = [];
  const compare = <T>(where: string, one: T, other: T, write: Write<T>): void => {
    if (JSON.stringify(one) !== JSON.stringify(other)) changes.push({ where, before: write(one), after: write(other) });
  };
  compare(fields.station, before.station, after.station, text);
  compare(fields.repsName, before.repsName, after.repsName, text);
  compare(fields.movement, before.movement, after.movement, (value) => words.form.movements[value]);
  compare(fields.summary, before.summary, after.summary, text);
  compare(fields.consequence, before.consequence, after.consequence, words.consequence);
  compare(fields.goals, before.goals, after.goals, words.goalList);
  compare(fields.usualGoal, before.usualGoal, after.usualGoal, words.usualGoal);
  compare(fields.loadsKg, before.loadsKg, after.loadsKg, (value) => text(words.loadList(value)));
  compare(fields.heightsM, before.heightsM, after.heightsM, (value) => text(words.heightList(value)));
  compare(fields.heightName, before.heightName, after.heightName, text);
  compare(fields.markEveryM, before.markEveryM, after.markEveryM, (value) =>
    value === null ? null : words.markEvery(value),
  );
  compare(fields.equipment, before.equipment, after.equipment, lines);
  compare(fields.cautions, before.cautions, after.cautions, lines);
  return [...changes, ...faultChanges(before.faults, after.faults, words)];
}

/** Faults are the same fault where they have the same code. */
function faultChanges(before: readonly Fault[], after: readonly Fault[], words: Words['standards']): SheetChange[] {
  const former = new Map(before.map((fault) => [fault.code, fault]));
  const present = new Set(after.map((fault) => fault.code));
  const changes: SheetChange[] = [];
  for (const fault of after) {
    const earlier = former.get(fault.code);
    if (earlier === undefined) changes.push({ where: words.added(fault.name), before: null, after: fault.standard });
    else changes.push(...inFault(earlier, fault, words));
  }
  for (const fault of before) {
    if (!present.has(fault.code)) {
      changes.push({ where: words.removed(fault.name), before: fault.standard, after: null });
    }
  }
  const order = (faults: readonly Fault[], codes: ReadonlySet<string>): Fault[] =>
    faults.filter((fault) => codes.has(fault.code));
  const names = (faults: readonly Fault[]): string => faults.map((fault) => fault.name).join('\n');
  const codes = (faults: readonly Fault[]): string => faults.map((fault) => fault.code).join();
  const [one, other] = [order(before, present), order(after, new Set(former.keys()))];
  if (codes(one) !== codes(other)) changes.push({ where: words.fields.order, before: names(one), after: names(other) });
  return changes;
}

function inFault(before: Fault, after: Fault, words: Words['standards']): SheetChange[] {
  const margin = (value: Fault['margin']): string | null =>
    value === null ? null : words.marginText(value.quantity, words.units[value.unit], value.direction, value.tolerance);
  const written = (fault: Fault): Readonly<Record<string, string | null>> => ({
    name: fault.name,
    initial: fault.initial,
    standard: fault.standard,
    stand: fault.stand,
    look: fault.look,
    cue: fault.cue,
    remedy: fault.remedy,
    bodyHeight: words.form.bodyHeights[bodyPlace(fault.bodyHeight)],
    margin: margin(fault.margin),
  });
  const [one, other] = [written(before), written(after)];
  return Object.keys(one).flatMap((field) => {
    const [was, is] = [one[field] ?? null, other[field] ?? null];
    if (was === is) return [];
    return [
      { where: words.inFault(after.name, words.fields[field as keyof typeof words.fields]), before: was, after: is },
    ];
  });
}

/** Which part of the body a height between floor (0) and overhead (1) is. */
export function bodyPlace(height: number): keyof Words['standards']['form']['bodyHeights'] {
  if (height < 0.12) return 'floor';
  if (height < 0.38) return 'knee';
  if (height < 0.58) return 'hip';
  if (height < 0.76) return 'chest';
  return height < 0.92 ? 'head' : 'above';
}
