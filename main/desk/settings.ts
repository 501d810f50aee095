import { defaultSettings, type Settings, settings } from '../../shared-types/contract/settings.ts';
import type { SettingReads } from '../ledger/settings.ts';
import { calls, type DeskParts } from './calls.ts';

const KEY = 'settings';

/** Answers the calls about the program's settings. */
export function settingsCalls({ ledger, changes }: DeskParts) {
  return calls.settings.router({
    get: calls.settings.get.handler(() => readSettings(ledger.settings)),
    put: calls.settings.put.handler(({ input }) => {
      const next = { ...readSettings(ledger.settings), ...defined(input) };
      ledger.settings.put(KEY, next);
      changes.changed('settings', null);
      return next;
    }),
  });
}

/** What is stored, field by field; a field that an older or newer program wrote in another shape takes its default. */
function readSettings(store: SettingReads): Settings {
  const stored = store.get(KEY);
  if (typeof stored !== 'object' || stored === null) return defaultSettings;
  const known = Object.entries(settings.shape).flatMap(([name, schema]) => {
    const parsed = schema.safeParse((stored as Record<string, unknown>)[name]);
    return parsed.success ? [[name, parsed.data]] : [];
  });
  return { ...defaultSettings, ...Object.fromEntries(known) };
}

function defined(given: object): Partial<Settings> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}
