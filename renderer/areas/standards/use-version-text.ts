import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import { useFormats, useWords } from '../../parts/words/words.tsx';

/** "Version 2, 4 Nov 2026", or "Version 1, as shipped". */
export function useVersionText(): (sheet: StandardSheet) => string {
  const words = useWords().standards;
  const { date } = useFormats();
  return ({ shipped, version, createdAt }) =>
    shipped || createdAt === 0 ? words.versionShipped(version) : words.versionOf(version, date(createdAt));
}
