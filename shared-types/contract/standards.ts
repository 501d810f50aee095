import { oc } from '@orpc/contract';
import { z } from 'zod';
import { standardSheet } from '../sheets/sheet.ts';
import { failures } from './failures.ts';

export const standards = {
  /** The latest version of every sheet. */
  list: oc.errors(failures).output(z.array(standardSheet)),
  /** All versions of one sheet, latest first. */
  versions: oc
    .errors(failures)
    .input(z.object({ id: z.string().max(64) }))
    .output(z.array(standardSheet)),
  get: oc
    .errors(failures)
    .input(z.object({ id: z.string().max(64), version: z.number().int().min(1) }))
    .output(standardSheet),
  /** Writes the next version of a sheet, or version 1 of a new one; any other version is a CONFLICT. */
  publish: oc.errors(failures).input(standardSheet).output(standardSheet),
};
