import type { PictureRow } from '../../../shared-types/contract/review/figures.ts';
import type { AttemptsOfSet } from '../../ledger/reports.ts';
import { ribbonText } from '../ribbon-text.ts';
import type { StationTexts } from './names.ts';

/** The attempts of sets as rows of one picture. `startOf`: go of each set by id, milliseconds since 1970 UTC. */
export function pictureOf(
  sets: readonly AttemptsOfSet[],
  startOf: ReadonlyMap<string, number>,
  { faults }: StationTexts,
): PictureRow[] {
  const sheet = { faults: [...faults.values()] };
  return sets.map(({ id, attempts }) => ({
    id,
    at: startOf.get(id) ?? 0,
    marks: ribbonText(sheet, attempts),
    cyclesS: attempts.map(({ cycleMs }) => (cycleMs === null ? null : cycleMs / 1_000)),
  }));
}
