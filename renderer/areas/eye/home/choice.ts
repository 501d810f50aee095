import type { Drill, DrillKind, Task } from '../../../../shared-types/drills/drill.ts';
import { numbersOf, shownFaults, shownMovement } from '../../../../shared-types/drills/numbers.ts';
import { advisedPlace, poorPlace } from '../../../../shared-types/drills/places.ts';
import type { FaultSize } from '../../../../shared-types/drills/range.ts';
import type { FaultCode } from '../../../../shared-types/motion/specification.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';

export type Pace = 'slow' | 'usual' | 'fast';

/** What the judge has chosen for the next drill. */
export interface Choice {
  readonly judge: string | null;
  readonly sheet: string | null;
  readonly heightM: number | null;
  readonly kind: DrillKind;
  /** Faults that may come in single reps and streams; empty for all. */
  readonly faults: readonly FaultCode[];
  /** The one fault of the other drills. */
  readonly fault: FaultCode | null;
  readonly reps: Readonly<Record<DrillKind, number>>;
  readonly size: FaultSize;
  readonly place: 'advised' | 'poor';
  readonly pace: Pace;
  readonly practice: boolean;
}

export const amounts: Readonly<Record<DrillKind, readonly number[]>> = {
  single: [6, 12, 20, 40],
  stream: [20, 30, 40, 60],
  line: [30, 50, 80],
  place: [10, 15, 25],
};

/** Reps a minute at race pace, about what a practised athlete keeps up; common practice, no source. */
const cadences = { 'wall-throw': 24, 'jump-burpee': 15, 'box-jump-over': 16 } as const;
const paces: Readonly<Record<Pace, number>> = { slow: 0.8, usual: 1, fast: 1.2 };

/** Sheets whose movement a figure can show. */
export function shownSheets(sheets: readonly StandardSheet[]): readonly StandardSheet[] {
  return sheets.filter((sheet) => shownMovement(sheet) !== null && shownFaults(sheet).length > 0);
}

export function firstChoice(sheets: readonly StandardSheet[], judge: string | null): Choice {
  const sheet = sheets.find((item) => item.movement === 'wall-throw') ?? sheets[0];
  return withSheet(
    {
      judge,
      sheet: null,
      heightM: null,
      kind: 'single',
      faults: [],
      fault: null,
      reps: { single: 12, stream: 30, line: 50, place: 15 },
      size: 'usual',
      place: 'advised',
      pace: 'usual',
      practice: false,
    },
    sheet,
  );
}

/** Takes another sheet: its usual height, and of the faults those that are on it. */
export function withSheet(choice: Choice, sheet: StandardSheet | undefined): Choice {
  if (sheet === undefined) return { ...choice, sheet: null };
  const shown = shownFaults(sheet);
  const middle: FaultCode[] = ['depth', 'chest', 'tall'];
  const fault = choice.fault !== null && shown.includes(choice.fault) ? choice.fault : null;
  return {
    ...choice,
    sheet: sheet.id,
    heightM: sheet.heightsM[0] ?? null,
    faults: choice.faults.filter((code) => shown.includes(code)),
    fault: fault ?? middle.find((code) => shown.includes(code)) ?? shown[0] ?? null,
  };
}

/** How narrow the interval of the strictness must be, against the judge's own precision, before the drill ends. */
const NARROW = 1.5;

function taskOf(choice: Choice, movement: NonNullable<ReturnType<typeof shownMovement>>): Task | null {
  const reps = choice.reps[choice.kind];
  const sole = choice.faults.length === 1 ? (choice.faults[0] ?? null) : null;
  const place = choice.place === 'poor' && sole !== null ? poorPlace(movement, sole) : advisedPlace(movement, sole);
  switch (choice.kind) {
    case 'single':
      return { kind: 'single', reps, faults: [...choice.faults], faultShare: 0.5, size: choice.size, place };
    case 'stream':
      return {
        kind: 'stream',
        reps,
        faults: [...choice.faults],
        faultShare: 0.2,
        faultShareAtEnd: 0.35,
        size: choice.size,
        fatigue: 0.6,
        place,
      };
    case 'line':
      if (choice.fault === null) return null;
      return {
        kind: 'line',
        fault: choice.fault,
        leastTrials: 15,
        mostTrials: reps,
        narrow: NARROW,
        place: choice.place === 'poor' ? poorPlace(movement, choice.fault) : advisedPlace(movement, choice.fault),
      };
    case 'place':
      if (choice.fault === null) return null;
      return {
        kind: 'place',
        fault: choice.fault,
        reps,
        poor: poorPlace(movement, choice.fault),
        advised: advisedPlace(movement, choice.fault),
      };
  }
}

/**
 * The drill that was chosen; null while something is missing.
 * @param now milliseconds since 1970 UTC
 * @param seed whole, 0 to 2^32 - 1: everything that is shown follows from it
 */
export function toDrill(choice: Choice, sheet: StandardSheet, id: string, now: number, seed: number): Drill | null {
  const movement = shownMovement(sheet);
  const task = movement === null ? null : taskOf(choice, movement);
  if (movement === null || task === null || choice.judge === null || choice.sheet !== sheet.id) return null;
  return {
    id,
    judge: choice.judge,
    sheet: { id: sheet.id, version: sheet.version },
    movement,
    numbers: numbersOf(sheet, choice.heightM),
    task,
    athlete: null,
    cadence: Math.round(cadences[movement] * paces[choice.pace]),
    variation: 1,
    seed,
    practice: choice.practice,
    createdAt: Math.round(now),
  };
}
