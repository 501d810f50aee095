import { type ReadyCriteria, readyCriteria, usualCriteria } from '../../../shared-types/drills/ready.ts';
import type { SettingReads } from '../../ledger/settings.ts';

export const CRITERIA_KEY = 'ready-criteria';

/** The gym's criteria; the usual ones where none are kept, or an older or newer program kept them in another shape. */
export function readCriteria(store: SettingReads): ReadyCriteria {
  const kept = readyCriteria.safeParse(store.get(CRITERIA_KEY));
  return kept.success ? kept.data : usualCriteria;
}
