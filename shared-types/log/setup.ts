import { z } from 'zod';

/** What a set aims at. `metres` in metres, `clock` in milliseconds, `reps` in counted reps. */
export const goal = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('reps'), reps: z.number().int().min(1).max(10_000) }),
  z.strictObject({ kind: z.literal('metres'), metres: z.number().min(1).max(100_000) }),
  z.strictObject({ kind: z.literal('clock'), milliseconds: z.number().int().min(1_000).max(86_400_000) }),
  z.strictObject({ kind: z.literal('open') }),
]);
export type Goal = z.infer<typeof goal>;
export type GoalKind = Goal['kind'];

export const before = z.enum(['fresh', 'run', 'station']);
/** What the athlete came from: rested, a run, or another station. */
export type Before = z.infer<typeof before>;

export const role = z.enum(['main', 'shadow']);
/** A shadow's calls never change the athlete's count. */
export type Role = z.infer<typeof role>;

/** What is fixed before go and never changes: who, which sheet version, which goal, under what conditions. */
export const setSetup = z.strictObject({
  id: z.uuid(),
  athlete: z.uuid(),
  judge: z.uuid(),
  sheet: z.strictObject({ id: z.string().min(1).max(64), version: z.number().int().min(1) }),
  goal,
  /** Load in kilograms, null where none applies or none was noted. */
  loadKg: z.number().min(0).max(500).nullable(),
  /** Height of the target line, or of the box, in metres. */
  heightM: z.number().min(0).max(10).nullable(),
  before,
  tags: z.array(z.string().min(1).max(40)).max(12),
  note: z.string().max(10_000),
  role,
  /** A practice set teaches the keys and stays out of every figure. */
  practice: z.boolean(),
  /** Milliseconds since 1970 UTC. */
  createdAt: z.number().int().min(0),
});
export type SetSetup = z.infer<typeof setSetup>;
