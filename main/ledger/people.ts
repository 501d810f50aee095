import type { Person } from '../../shared-types/people.ts';
import { canonicalJson, foldText } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { build } from './query.ts';

export interface PeopleFilter {
  /** Every word must occur in the name or the nickname, whatever its case and accents. */
  readonly search?: string;
  readonly role?: 'athlete' | 'judge';
  /** Archived people are left out unless asked for. */
  readonly archived?: 'no' | 'only' | 'also';
}

/** A person with how often they appear; practice sets and shadows are counted too, as they bar nothing. */
export interface PersonRow extends Person {
  readonly setsAsAthlete: number;
  readonly setsAsJudge: number;
}

export interface PeopleReads {
  /** By name, as the locale-free order of their folded text. */
  list(filter?: PeopleFilter): PersonRow[];
  /** Errors: `unknown-person`. */
  get(id: string): Person;
}

/** What of a person may change. */
export type PersonChange = Partial<Pick<Person, 'name' | 'nickname' | 'athlete' | 'judge' | 'notes'>>;

export interface People extends PeopleReads {
  /** `already` where the same person is there to the byte. Errors: `conflict` where the id carries another person. */
  create(person: Person): 'new' | 'already';
  /** Errors: `unknown-person`. */
  change(id: string, change: PersonChange): Person;
  /** Takes a person out of the lists; all their sets stay. `at` in milliseconds since 1970 UTC. Errors: `unknown-person`. */
  archive(id: string, at: number): Person;
  restore(id: string): Person;
}

const columns = ['id', 'name', 'nickname', 'athlete', 'judge', 'notes', 'archived_at', 'created_at'] as const;

interface PersonColumns {
  id: string;
  name: string;
  nickname: string;
  athlete: number;
  judge: number;
  notes: string;
  archived_at: number | null;
  created_at: number;
}

export function peopleReads(connection: ReadConnection): PeopleReads {
  return {
    list: (filter = {}) => connection.all(listQuery(filter)).map(asPersonRow),
    get: (id) => {
      const row = connection.first(build.selectFrom('people').select(columns).where('id', '=', id));
      if (row === undefined)
        throw new LedgerError('unknown-person', `The database ${connection.path} has no person ${id}.`);
      return asPerson(row);
    },
  };
}

function listQuery(filter: PeopleFilter) {
  let query = build
    .selectFrom('people')
    .select(columns)
    .select((eb) => [
      eb
        .selectFrom('set_facts')
        .select(eb.fn.countAll<number>().as('c'))
        .whereRef('set_facts.athlete', '=', 'people.id')
        .as('setsAsAthlete'),
      eb
        .selectFrom('set_facts')
        .select(eb.fn.countAll<number>().as('c'))
        .whereRef('set_facts.judge', '=', 'people.id')
        .as('setsAsJudge'),
    ])
    .orderBy('search')
    .orderBy('n');
  for (const word of searchWords(filter.search)) {
    query = query.where((eb) => eb(eb.fn<number>('instr', ['search', eb.val(word)]), '>', 0));
  }
  if (filter.role !== undefined) query = query.where(filter.role, '=', 1);
  if (filter.archived !== 'also')
    query = query.where('archived_at', filter.archived === 'only' ? 'is not' : 'is', null);
  return query;
}

/** The words of a search, folded; at most eight, so that no search is dear. */
export function searchWords(search: string | undefined): string[] {
  return foldText((search ?? '').toWellFormed())
    .split(/\s+/)
    .filter((word) => word !== '')
    .slice(0, 8);
}

export function peopleWrites(connection: WriteConnection): People {
  const reads = peopleReads(connection);
  const update = (id: string, change: PersonChange & { archivedAt?: number | null }) =>
    connection.transaction(() => {
      const next = wellFormed({ ...reads.get(id), ...change });
      connection.run(build.updateTable('people').set(changeable(next)).where('id', '=', id));
      return next;
    });
  return {
    ...reads,
    create: (given) => {
      const person = wellFormed(given);
      return connection.transaction(() => {
        const stored = connection.first(build.selectFrom('people').select(columns).where('id', '=', person.id));
        if (stored !== undefined) {
          if (canonicalJson(asPerson(stored)) === canonicalJson(person)) return 'already';
          throw new LedgerError(
            'conflict',
            `The id ${person.id} already belongs to ${stored.name}, with other particulars.`,
          );
        }
        const { id, createdAt } = person;
        connection.run(build.insertInto('people').values({ id, created_at: createdAt, ...changeable(person) }));
        return 'new';
      });
    },
    change: update,
    archive: (id, at) => update(id, { archivedAt: at }),
    restore: (id) => update(id, { archivedAt: null }),
  };
}

/** SQLite keeps UTF-8, which has no half of a surrogate pair; what is stored must be what is compared. */
function wellFormed(person: Person): Person {
  const { name, nickname, notes } = person;
  return { ...person, name: name.toWellFormed(), nickname: nickname.toWellFormed(), notes: notes.toWellFormed() };
}

function changeable(person: Person) {
  return {
    name: person.name,
    nickname: person.nickname,
    athlete: Number(person.athlete),
    judge: Number(person.judge),
    notes: person.notes,
    archived_at: person.archivedAt,
    search: foldText(`${person.name} ${person.nickname}`),
  };
}

function asPerson(row: PersonColumns): Person {
  return {
    id: row.id,
    name: row.name,
    nickname: row.nickname,
    athlete: row.athlete === 1,
    judge: row.judge === 1,
    notes: row.notes,
    archivedAt: row.archived_at,
    createdAt: row.created_at,
  };
}

function asPersonRow(row: PersonColumns & { setsAsAthlete: number | null; setsAsJudge: number | null }): PersonRow {
  return { ...asPerson(row), setsAsAthlete: row.setsAsAthlete ?? 0, setsAsJudge: row.setsAsJudge ?? 0 };
}
