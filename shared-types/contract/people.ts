import { oc } from '@orpc/contract';
import { z } from 'zod';
import { person } from '../people.ts';
import { failures } from './failures.ts';

/** A person with the tally of their sets. */
export const personLine = z.object({
  person,
  setsAsAthlete: z.number().int(),
  setsAsJudge: z.number().int(),
});
export type PersonLine = z.infer<typeof personLine>;

export const people = {
  list: oc
    .errors(failures)
    .input(z.object({ archived: z.boolean() }))
    .output(z.array(personLine)),
  /** Adds the person, or changes the one with this id. */
  save: oc.errors(failures).input(person).output(person),
  archive: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(person),
  restore: oc
    .errors(failures)
    .input(z.object({ id: z.uuid() }))
    .output(person),
};
