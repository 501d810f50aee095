import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { type Reading, useCall } from '../../parts/desk/use-call.ts';

/** All versions of a sheet, latest first. */
export function useVersions(id: string): Reading<readonly StandardSheet[]> {
  return useCall(`versions ${id}`, (client, signal) => client.standards.versions({ id }, { signal }), {
    topics: ['standards'],
  });
}
