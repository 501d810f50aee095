import type { Consequence, Fault, StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { readNumber } from '../../../parts/controls/read-number.ts';

type Margin = NonNullable<Fault['margin']>;

/** A fault while it is written: numbers may be missing. `key` tells entries apart, whatever is typed. */
export interface FaultEntry extends Omit<Fault, 'margin'> {
  readonly key: string;
  readonly margin: (Omit<Margin, 'tolerance'> & { readonly tolerance: number | null }) | null;
}

/** A sheet while it is written: lists as text, numbers as they may be missing. */
export interface SheetEntry {
  readonly station: string;
  readonly repsName: string;
  readonly movement: StandardSheet['movement'];
  readonly summary: string;
  readonly goals: StandardSheet['goals'];
  readonly usualKind: StandardSheet['usualGoal']['kind'];
  /** Reps, metres or minutes, as the kind says. */
  readonly usualAmount: number | null;
  readonly consequence: Consequence['kind'];
  readonly consequenceAmount: number | null;
  readonly loads: string;
  readonly heights: string;
  readonly heightName: string;
  readonly markEveryM: number | null;
  readonly equipment: string;
  readonly cautions: string;
  readonly faults: readonly FaultEntry[];
}

const msPerMinute = 60_000;

export const emptyFault: Omit<FaultEntry, 'key'> = {
  code: '',
  name: '',
  initial: '',
  standard: '',
  stand: '',
  look: '',
  cue: '',
  remedy: '',
  bodyHeight: 0.5,
  margin: null,
};

export const emptySheet: SheetEntry = {
  station: '',
  repsName: '',
  movement: 'other',
  summary: '',
  goals: ['reps', 'open'],
  usualKind: 'reps',
  usualAmount: 50,
  consequence: 'repeat',
  consequenceAmount: null,
  loads: '',
  heights: '',
  heightName: '',
  markEveryM: null,
  equipment: '',
  cautions: '',
  faults: [{ ...emptyFault, key: '1' }],
};

export function entryOf(sheet: StandardSheet): SheetEntry {
  const { consequence, usualGoal } = sheet;
  return {
    station: sheet.station,
    repsName: sheet.repsName,
    movement: sheet.movement,
    summary: sheet.summary,
    goals: sheet.goals,
    usualKind: usualGoal.kind,
    usualAmount: usualGoal.kind === 'clock' ? usualGoal.amount / msPerMinute : usualGoal.amount,
    consequence: consequence.kind,
    consequenceAmount: amountOf(consequence),
    loads: sheet.loadsKg.join(' '),
    heights: sheet.heightsM.join(' '),
    heightName: sheet.heightName,
    markEveryM: sheet.markEveryM,
    equipment: sheet.equipment.join('\n'),
    cautions: sheet.cautions.join('\n'),
    faults: sheet.faults.map((fault, index) => ({ ...fault, key: `${fault.code} ${index}` })),
  };
}

function amountOf(consequence: Consequence): number | null {
  switch (consequence.kind) {
    case 'repeat':
      return null;
    case 'metres-back':
      return consequence.metres;
    case 'seconds-added':
      return consequence.seconds;
  }
}

/**
 * Numbers separated by spaces or semicolons; NaN stands where a word is no number.
 * @internal exported for its test, which asks it directly
 */
export function readNumbers(text: string): number[] {
  const words = text.split(/[\s;]+/).filter((word) => word !== '');
  return words.map((word) => readNumber(word.replace(/[.,]$/, '')) ?? Number.NaN);
}

function readLines(text: string): string[] {
  const lines = text.split('\n').map((line) => line.trim());
  return lines.filter((line) => line !== '');
}

/** What only the desk or the address knows of a sheet that is being written. */
export type SheetIdentity = Pick<StandardSheet, 'id' | 'version' | 'createdAt'>;

/** The sheet as it would be published. A number that is missing is NaN, which the sheet's schema refuses. */
export function sheetOf(entry: SheetEntry, identity: SheetIdentity): StandardSheet {
  const amount = entry.usualAmount ?? Number.NaN;
  return {
    ...identity,
    shipped: false,
    station: entry.station.trim(),
    repsName: entry.repsName.trim(),
    movement: entry.movement,
    summary: entry.summary.trim(),
    goals: [...entry.goals],
    usualGoal: {
      kind: entry.usualKind,
      amount: entry.usualKind === 'open' ? 0 : entry.usualKind === 'clock' ? Math.round(amount * msPerMinute) : amount,
    },
    consequence: consequenceOf(entry),
    loadsKg: readNumbers(entry.loads),
    heightsM: readNumbers(entry.heights),
    heightName: entry.heightName.trim(),
    markEveryM: entry.markEveryM,
    equipment: readLines(entry.equipment),
    cautions: readLines(entry.cautions),
    faults: entry.faults.map(faultOf),
  };
}

function consequenceOf({ consequence, consequenceAmount }: SheetEntry): Consequence {
  const amount = consequenceAmount ?? Number.NaN;
  switch (consequence) {
    case 'repeat':
      return { kind: 'repeat' };
    case 'metres-back':
      return { kind: 'metres-back', metres: amount };
    case 'seconds-added':
      return { kind: 'seconds-added', seconds: amount };
  }
}

function faultOf({ key: _key, margin, ...fault }: FaultEntry): Fault {
  return {
    ...fault,
    code: fault.code.trim(),
    name: fault.name.trim(),
    initial: fault.initial.trim().toUpperCase(),
    margin: margin === null ? null : { ...margin, tolerance: margin.tolerance ?? Number.NaN },
  };
}

/** A code made of a name: "Knee off the floor" gives "knee-off-the-floor", cut to what a code may hold. */
export function codeOf(name: string): string {
  return slug(name, 24).replace(/^[^a-z]+/, '');
}

/** A new sheet's id, made of its station's name and unlike all others. */
export function newSheetId(station: string, taken: ReadonlySet<string>): string {
  const base = slug(station, 56) || 'sheet';
  if (!taken.has(base)) return base;
  for (let number = 2; ; number += 1) {
    const id = `${base}-${number}`;
    if (!taken.has(id)) return id;
  }
}

function slug(text: string, longest: number): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longest)
    .replace(/^-+|-+$/g, '');
}
