import { canonicalJson } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { build } from './query.ts';

export interface SettingReads {
  /** The value kept under `key`, undefined where there is none. Check its shape: an older program may have written it. */
  get(key: string): unknown;
}

export interface Settings extends SettingReads {
  /** Keeps a JSON value under `key`, in place of an earlier one. */
  put(key: string, value: unknown): void;
}

export function settingReads(connection: ReadConnection): SettingReads {
  return {
    get: (key) => {
      const row = connection.first(build.selectFrom('settings').select('value').where('key', '=', key));
      return row === undefined ? undefined : JSON.parse(row.value);
    },
  };
}

export function settingWrites(connection: WriteConnection, now: () => number): Settings {
  return {
    ...settingReads(connection),
    put: (key, value) => {
      const row = { value: canonicalJson(value), changed_at: now() };
      connection.run(
        build
          .insertInto('settings')
          .values({ key, ...row })
          .onConflict((on) => on.column('key').doUpdateSet(row)),
      );
    },
  };
}
