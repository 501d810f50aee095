import type { Person } from '../../shared-types/people.ts';
import { LedgerError } from '../ledger/errors.ts';
import type { People } from '../ledger/people.ts';
import { calls, type DeskParts } from './calls.ts';

/** Adds a person, or changes what may change of the one with this id. */
function save(people: People, person: Person): Person {
  try {
    people.create(person);
    return people.get(person.id);
  } catch (error) {
    if (!(error instanceof LedgerError) || error.code !== 'conflict') throw error;
    const { name, nickname, athlete, judge, notes } = person;
    return people.change(person.id, { name, nickname, athlete, judge, notes });
  }
}

/** Answers the calls about people. */
export function peopleCalls({ ledger, changes, now }: DeskParts) {
  return calls.people.router({
    list: calls.people.list.handler(({ input }) =>
      ledger.people
        .list({ archived: input.archived ? 'also' : 'no' })
        .map(({ setsAsAthlete, setsAsJudge, ...person }) => ({
          person,
          setsAsAthlete,
          setsAsJudge,
        })),
    ),
    save: calls.people.save.handler(({ input }) => {
      const saved = save(ledger.people, input);
      changes.changed('people', saved.id);
      return saved;
    }),
    archive: calls.people.archive.handler(({ input }) => {
      const person = ledger.people.archive(input.id, now());
      changes.changed('people', person.id);
      return person;
    }),
    restore: calls.people.restore.handler(({ input }) => {
      const person = ledger.people.restore(input.id);
      changes.changed('people', person.id);
      return person;
    }),
  });
}
