import { z } from 'zod';

/** How a fault's margin is measured: signed, positive while the standard is met. */
const margin = z.strictObject({
  quantity: z.string().min(1).max(200),
  unit: z.enum(['cm', 'ms', 'degrees']),
  /** Which side of zero is a no-rep, in words a judge understands. */
  direction: z.string().min(1).max(200),
  /** Within this much of zero the sheet gives the athlete the benefit of the doubt, in `unit`. */
  tolerance: z.number().min(0).max(1_000),
});

const text = z.string().min(1).max(2_000);

export const fault = z.strictObject({
  code: z.string().regex(/^[a-z][a-z0-9-]{0,23}$/),
  /** The fault from the judge's eye, a few words: it stands on the button. */
  name: z.string().min(1).max(40),
  /** One letter for the ribbon's notch and the default key; unique on the sheet. */
  initial: z.string().regex(/^[A-Z0-9]$/),
  /** The standard that it breaks. */
  standard: text,
  /** Where the judge stands to see it. */
  stand: text,
  /** What the judge looks at. */
  look: text,
  /** What to shout to the athlete. */
  cue: text,
  /** What to train. */
  remedy: text,
  /** Where the body breaks the standard: 1 overhead, 0 on the floor. It places the button. */
  bodyHeight: z.number().min(0).max(1),
  margin: margin.nullable(),
});
export type Fault = z.infer<typeof fault>;

export const consequence = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('repeat') }),
  z.strictObject({ kind: z.literal('metres-back'), metres: z.number().positive().max(1_000) }),
  z.strictObject({ kind: z.literal('seconds-added'), seconds: z.number().positive().max(3_600) }),
]);
/** What a no-rep entails: the attempt is repeated, metres are taken back, or seconds are added to the clock. */
export type Consequence = z.infer<typeof consequence>;

const movement = z.enum(['wall-throw', 'jump-burpee', 'box-jump-over', 'other']);

/** The written standards of one station. A version is never edited; a change is the next version. */
export const standardSheet = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,63}$/),
    version: z.number().int().min(1),
    station: z.string().trim().min(1).max(80),
    /** What one rep is called in plural, for sentences: "throws". */
    repsName: z.string().trim().min(1).max(40),
    movement,
    summary: text,
    goals: z.array(z.enum(['reps', 'metres', 'clock', 'open'])).min(1),
    /** Offered first when a set is set up: reps, or metres, or milliseconds. */
    usualGoal: z.strictObject({ kind: z.enum(['reps', 'metres', 'clock', 'open']), amount: z.number().min(0) }),
    consequence,
    /** Usual loads in kilograms; empty where the station has none. */
    loadsKg: z.array(z.number().positive().max(500)).max(12),
    /** Usual target or box heights in metres; empty where there is none. */
    heightsM: z.array(z.number().positive().max(10)).max(12),
    /** What the height measures: "Target line", "Box"; empty where there is none. */
    heightName: z.string().max(40),
    /** Metres between marks on the lane, null where distance does not count. */
    markEveryM: z.number().positive().max(1_000).nullable(),
    equipment: z.array(text).max(20),
    cautions: z.array(text).max(20),
    faults: z.array(fault).min(1).max(12),
    shipped: z.boolean(),
    createdAt: z.number().int().min(0),
  })
  .refine((sheet) => unique(sheet.faults.map((item) => item.code)), 'each fault code stands once on a sheet')
  .refine((sheet) => unique(sheet.faults.map((item) => item.initial)), 'each fault initial stands once on a sheet')
  .refine((sheet) => sheet.goals.includes(sheet.usualGoal.kind), 'the usual goal must be among the goals allowed');
export type StandardSheet = z.infer<typeof standardSheet>;

function unique(values: readonly string[]): boolean {
  return new Set(values).size === values.length;
}
