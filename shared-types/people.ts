import { z } from 'zod';

/** An athlete, a judge, or both. People are archived rather than deleted: their sets keep pointing at them. */
export const person = z.strictObject({
  id: z.uuid(),
  name: z.string().trim().min(1, 'a person needs a name').max(10_000),
  nickname: z.string().trim().max(10_000),
  athlete: z.boolean(),
  judge: z.boolean(),
  notes: z.string().max(10_000),
  /** Milliseconds since 1970 UTC, null while active. */
  archivedAt: z.number().int().min(0).nullable(),
  createdAt: z.number().int().min(0),
});
export type Person = z.infer<typeof person>;

/** What a screen calls a person: the nickname where there is one. */
export function calledName(who: Pick<Person, 'name' | 'nickname'>): string {
  return who.nickname === '' ? who.name : who.nickname;
}
