import type { StandardSheet } from '../../shared-types/sheets/sheet.ts';
import { canonicalJson, checksum, foldText } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { build } from './query.ts';
import { checkedBody } from './rows.ts';

export interface SheetReads {
  /** The latest version of every sheet, by station. */
  latest(): StandardSheet[];
  /** Errors: `unknown-sheet`. */
  get(id: string, version: number): StandardSheet;
  /** Every version of a sheet, oldest first; empty for an unknown one. */
  versions(id: string): StandardSheet[];
}

export interface Sheets extends SheetReads {
  /**
   * Adds the next version of a sheet (1 for a new one). `already` where the same version is there to the byte. Errors:
   * `version-not-next`, which also answers an attempt to change a version.
   */
  publish(sheet: StandardSheet): 'new' | 'already';
  /**
   * Puts in the sheets that come with the program; again changes nothing. `kept` where the gym has its own sheet under
   * that id and version: that one stays.
   */
  seed(sheets: readonly StandardSheet[]): ('new' | 'already' | 'kept')[];
}

export function sheetReads(connection: ReadConnection): SheetReads {
  const parse = (row: { id: string; version: number; body: string; crc: number }): StandardSheet =>
    JSON.parse(checkedBody(row, `Standard sheet ${row.id}, version ${row.version},`, connection.path));
  const columns = ['id', 'version', 'body', 'crc'] as const;
  return {
    latest: () =>
      connection
        .all(
          build
            .selectFrom('sheets as s')
            .select(columns)
            .where('version', '=', (eb) =>
              eb
                .selectFrom('sheets as other')
                .select((inner) => inner.fn.max('other.version').as('version'))
                .whereRef('other.id', '=', 's.id'),
            )
            .orderBy('station')
            .orderBy('id'),
        )
        .map(parse),
    get: (id, version) => {
      const row = connection.first(
        build.selectFrom('sheets').select(columns).where('id', '=', id).where('version', '=', version),
      );
      if (row === undefined) {
        throw new LedgerError(
          'unknown-sheet',
          `The database ${connection.path} has no standard sheet ${id}, version ${version}.`,
        );
      }
      return parse(row);
    },
    versions: (id) =>
      connection.all(build.selectFrom('sheets').select(columns).where('id', '=', id).orderBy('version')).map(parse),
  };
}

export function sheetWrites(connection: WriteConnection): Sheets {
  const stored = (id: string, version: number) =>
    connection.first(build.selectFrom('sheets').select('body').where('id', '=', id).where('version', '=', version))
      ?.body;
  const latest = (id: string) =>
    connection.first(
      build
        .selectFrom('sheets')
        .select((eb) => eb.fn.max('version').as('version'))
        .where('id', '=', id),
    )?.version ?? 0;
  const insert = (sheet: StandardSheet, body: string) => {
    const { id, version, station, shipped, createdAt } = sheet;
    const search = foldText(station);
    connection.run(
      build.insertInto('sheets').values({
        id,
        version,
        station,
        shipped: Number(shipped),
        created_at: createdAt,
        search,
        body,
        crc: checksum(body),
      }),
    );
  };
  return {
    ...sheetReads(connection),
    publish: (sheet) =>
      connection.transaction(() => {
        const body = canonicalJson(sheet);
        if (stored(sheet.id, sheet.version) === body) return 'already';
        const next = latest(sheet.id) + 1;
        if (sheet.version !== next) {
          throw new LedgerError(
            'version-not-next',
            `The next version of the standard sheet ${sheet.id} is ${next}, not ${sheet.version}. A published version never changes.`,
          );
        }
        insert(sheet, body);
        return 'new';
      }),
    seed: (sheets) =>
      connection.transaction(() =>
        sheets.map((sheet) => {
          const body = canonicalJson(sheet);
          const there = stored(sheet.id, sheet.version);
          if (there === body) return 'already';
          if (there !== undefined || sheet.version < latest(sheet.id)) return 'kept';
          insert(sheet, body);
          return 'new';
        }),
      ),
  };
}
