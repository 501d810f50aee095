import { oc } from '@orpc/contract';
import { z } from 'zod';
import { before, goal } from '../log/setup.ts';
import { failures } from './failures.ts';

/** The last choices of a set's setup, offered again. */
const lastSetup = z.object({
  athlete: z.uuid().nullable(),
  judge: z.uuid().nullable(),
  sheet: z.string().nullable(),
  goal: goal.nullable(),
  loadKg: z.number().nullable(),
  heightM: z.number().nullable(),
  before,
  tags: z.array(z.string()),
});

export const settings = z.object({
  /** `system` follows the computer's light or dark; Judge is always dark unless told otherwise. */
  theme: z.enum(['system', 'paper', 'hall']),
  sounds: z.boolean(),
  spokenCounts: z.boolean(),
  /** Seconds counted down before go. */
  countdownS: z.number().int().min(0).max(60),
  cautionsReadAt: z.number().int().nullable(),
  /** Action name to the keys that trigger it, as KeyboardEvent.code values; absent actions keep their defaults. */
  keys: z.record(z.string().max(40), z.array(z.string().max(40)).max(4)),
  lastSetup: lastSetup.nullable(),
});
export type Settings = z.infer<typeof settings>;

export const defaultSettings: Settings = {
  theme: 'system',
  sounds: true,
  spokenCounts: false,
  countdownS: 10,
  cautionsReadAt: null,
  keys: {},
  lastSetup: null,
};

export const settingsCalls = {
  get: oc.errors(failures).output(settings),
  /** Changes the fields given, keeps the rest; answers the whole. */
  put: oc.errors(failures).input(settings.partial()).output(settings),
};
