import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useCall } from '../../../parts/desk/use-call.ts';

/** The standard sheets by id, by their latest versions; none until they are read. */
export function useSheets(): ReadonlyMap<string, StandardSheet> {
  const sheets = useCall('review sheets', (client, signal) => client.standards.list(undefined, { signal }), {
    topics: ['standards'],
  });
  return new Map((sheets.data ?? []).map((sheet) => [sheet.id, sheet]));
}
