import { boxJumpOver } from './box-jump-over.ts';
import { jumpBurpee } from './jump-burpee.ts';
import type { StandardSheet } from './sheet.ts';
import { wallThrow } from './wall-throw.ts';

/** The sheets that every new database begins with. */
export const shippedSheets: readonly StandardSheet[] = [wallThrow, jumpBurpee, boxJumpOver];
