import type { SetSetup } from '../../shared-types/log/setup.ts';
import { canonicalJson, checksum, foldText } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { unknownSet } from './log.ts';
import { build } from './query.ts';
import { checkedBody } from './rows.ts';
import { listSets, type SetPage, type SetPageRequest, type UnfinishedSet, unfinishedSets } from './set-list.ts';

export interface SetReads {
  /** Errors: `unknown-set`, `damaged`. */
  get(id: string): SetSetup;
  has(id: string): boolean;
  /** The sets that match, latest first, a page at a time. */
  list(request: SetPageRequest): SetPage;
  /** Sets that have begun and may not have ended, latest first; the fold of their log decides. */
  unfinished(): UnfinishedSet[];
  /** Every tag in use, with the number of its sets, the commonest first. */
  tags(): { tag: string; sets: number }[];
}

export interface Sets extends SetReads {
  /**
   * Records the setup of a set. `already` where the same setup is there to the byte. Errors: `conflict` where the id
   * carries another setup, `unknown-person`, `unknown-sheet`.
   */
  create(setup: SetSetup): 'new' | 'already';
}

export function setReads(connection: ReadConnection): SetReads {
  const body = connection.prepare<[string], { body: string; crc: number }>('SELECT body, crc FROM sets WHERE id = ?');
  return {
    get: (id) => {
      const row = body.get(id);
      if (row === undefined) throw unknownSet(id, connection.path);
      return JSON.parse(checkedBody(row, `The setup of set ${id}`, connection.path));
    },
    has: (id) => body.get(id) !== undefined,
    list: (request) => listSets(connection, request),
    unfinished: () => unfinishedSets(connection),
    tags: () =>
      connection.all(
        build
          .selectFrom('set_tags')
          .select((eb) => ['tag', eb.fn.countAll<number>().as('sets')])
          .groupBy('tag')
          .orderBy('sets', 'desc')
          .orderBy('tag'),
      ),
  };
}

export function setWrites(connection: WriteConnection): Sets {
  return {
    ...setReads(connection),
    create: (setup) => connection.transaction(() => createSet(connection, setup)),
  };
}

/** Records a setup inside a transaction of the caller's. Errors: as `Sets.create`. */
export function createSet(connection: WriteConnection, setup: SetSetup): 'new' | 'already' {
  const body = canonicalJson(setup);
  const stored = connection.first(build.selectFrom('sets').select('body').where('id', '=', setup.id));
  if (stored !== undefined) {
    if (stored.body === body) return 'already';
    throw new LedgerError(
      'conflict',
      `The set ${setup.id} is already there with another setup. A setup never changes.`,
    );
  }
  for (const id of [setup.athlete, setup.judge]) {
    if (connection.first(build.selectFrom('people').select('n').where('id', '=', id)) === undefined) {
      throw new LedgerError('unknown-person', `The database ${connection.path} has no person ${id}.`);
    }
  }
  const { id: sheetId, version } = setup.sheet;
  const sheet = build.selectFrom('sheets').select('n').where('id', '=', sheetId).where('version', '=', version);
  if (connection.first(sheet) === undefined) {
    throw new LedgerError(
      'unknown-sheet',
      `The database ${connection.path} has no standard sheet ${sheetId}, version ${version}.`,
    );
  }
  const shared = {
    athlete: setup.athlete,
    judge: setup.judge,
    sheet_id: sheetId,
    sheet_version: version,
    load_kg: setup.loadKg,
    height_m: setup.heightM,
    before: setup.before,
    role: setup.role,
    practice: Number(setup.practice),
  };
  const { id: setN } = connection.run(
    build.insertInto('sets').values({
      id: setup.id,
      ...shared,
      goal_kind: setup.goal.kind,
      created_at: setup.createdAt,
      search: foldText(`${setup.tags.join(' ')} ${setup.note}`.toWellFormed()),
      body,
      crc: checksum(body),
    }),
  );
  for (const tag of new Set(setup.tags.map((text) => text.toWellFormed()))) {
    connection.run(build.insertInto('set_tags').values({ set_n: setN, tag }));
  }
  // Every set has its row of facts from the first moment on, so that one index lists all of them by time.
  connection.run(build.insertInto('set_facts').values({ set_n: setN, happened_at: setup.createdAt, ...shared }));
  return 'new';
}
