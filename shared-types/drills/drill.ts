import { z } from 'zod';
import { BUILDS } from '../motion/body.ts';
import { FAULTS, type FaultCode, MOVEMENTS } from '../motion/specification.ts';

/** Every fault that a figure can show, over all movements. */
const codes = [...new Set(MOVEMENTS.flatMap((movement): readonly FaultCode[] => FAULTS[movement]))];
export const shownFault = z.enum(codes);
const seed = z.number().int().min(0).max(0xffff_ffff);
const metres = z.number().min(0).max(10);

export const athlete = z.strictObject({ stature: z.number().min(1.4).max(2.1), build: z.enum(BUILDS) });

/** `SheetNumbers` of the figure's motion, kept with the drill: what was shown and what was true follow from them. */
const sheetNumbers = z.strictObject({
  lineHeight: metres,
  targetWidth: metres,
  ballRadius: metres,
  ballMass: z.number().min(0).max(100),
  handsAllowance: z.number().min(0).max(200),
  creepAllowance: z.number().min(0).max(200),
  togetherAllowance: z.number().min(0).max(1_000),
  tallAllowance: z.number().min(0).max(90),
  tallAsked: z.boolean(),
  boxHeight: metres,
  boxDepth: metres,
  boxWidth: metres,
  tolerance: z.partialRecord(shownFault, z.number().min(0).max(1_000)),
});

/**
 * Where the judge stands: `bearing` in degrees round the athlete from straight ahead (0) over the athlete's left (90) to
 * behind (180 or -180), `distance` from the athlete and eye `height` in metres. `name` is what the scores are kept apart by:
 * the place that the sheet advises, one chosen because it is poor, or any other.
 */
export const place = z.strictObject({
  name: z.enum(['advised', 'poor', 'own']),
  bearing: z.number().min(-180).max(180),
  distance: z.number().min(0.5).max(30),
  height: z.number().min(0.1).max(4),
});
export type Place = z.infer<typeof place>;
export type PlaceName = Place['name'];

const faults = z
  .array(shownFault)
  .max(12)
  .refine((list) => new Set(list).size === list.length, 'a fault is named once');

/** Single reps, each called and then explained. */
const single = z.strictObject({
  kind: z.literal('single'),
  reps: z.number().int().min(1).max(200),
  /** Faults that may come; empty for all that sheet and figure share. */
  faults,
  /** Share of the reps with a fault, 0 to 1. */
  faultShare: z.number().min(0).max(1),
  size: z.enum(['gross', 'usual', 'fine']),
  place,
});
/** Reps at race cadence without a pause, called as they go. */
const stream = z.strictObject({
  kind: z.literal('stream'),
  reps: z.number().int().min(1).max(200),
  faults,
  /** Share of faulty reps at the beginning and at the end. */
  faultShare: z.number().min(0).max(1),
  faultShareAtEnd: z.number().min(0).max(1),
  size: z.enum(['gross', 'usual', 'fine']),
  /** How tired the athlete is at the end, 0 to 1. */
  fatigue: z.number().min(0).max(1),
  place,
});
/** One fault; each rep's margin follows from the calls so far, until the judge's line is known well enough. */
const line = z.strictObject({
  kind: z.literal('line'),
  fault: shownFault,
  leastTrials: z.number().int().min(1).max(300),
  mostTrials: z.number().int().min(1).max(300),
  /** Ends once the 95 % interval of the strictness is no wider than this many of the judge's own precision. */
  narrow: z.number().min(0.1).max(10),
  place,
});
/** The same reps from a poor place and from the advised one, mixed. */
const stand = z.strictObject({
  kind: z.literal('place'),
  fault: shownFault,
  /** Each is shown twice. */
  reps: z.number().int().min(1).max(150),
  poor: place,
  advised: place,
});

export const task = z.discriminatedUnion('kind', [single, stream, line, stand]);
export type Task = z.infer<typeof task>;
export type DrillKind = Task['kind'];
export type TaskOf<K extends DrillKind> = Extract<Task, { kind: K }>;

/** What is fixed before a drill begins and never changes; all that it shows follows from it and from the calls. */
export const drill = z
  .strictObject({
    id: z.uuid(),
    judge: z.uuid(),
    sheet: z.strictObject({ id: z.string().min(1).max(64), version: z.number().int().min(1) }),
    movement: z.enum(MOVEMENTS),
    numbers: sheetNumbers,
    task,
    /** Null: another body at every rep, drawn from the seed; in a stream one body, drawn from the seed. */
    athlete: athlete.nullable(),
    /** Reps a minute. */
    cadence: z.number().min(4).max(60),
    /** How much reps differ from one another, 0 to 1. */
    variation: z.number().min(0).max(1),
    seed,
    /** Teaches the keys and stays out of every score but its own. */
    practice: z.boolean(),
    /** Milliseconds since 1970 UTC. */
    createdAt: z.number().int().min(0),
  })
  .refine(
    ({ movement, task: asked }) =>
      faultsNamed(asked).every((code) => (FAULTS[movement] as readonly string[]).includes(code)),
    'the figure shows only the faults of its movement',
  )
  .refine(
    ({ task: asked }) => asked.kind !== 'line' || asked.leastTrials <= asked.mostTrials,
    'the least trials are no more than the most',
  );
export type Drill = z.infer<typeof drill>;

/** The faults that a task names; empty where all may come. */
export function faultsNamed(asked: Task): readonly FaultCode[] {
  return asked.kind === 'line' || asked.kind === 'place' ? [asked.fault] : asked.faults;
}
