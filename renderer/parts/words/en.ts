import { commonWords } from './en/common.ts';
import { judgeWords } from './en/judge.ts';
import { ledgerWords } from './en/ledger.ts';
import { ribbonWords } from './en/ribbon.ts';
import { shellWords } from './en/shell.ts';
import type { Formats } from './formats.ts';

/** English, composed of one file an area. */
export function en(formats: Formats) {
  return {
    common: commonWords(formats),
    ledger: ledgerWords(formats),
    ribbon: ribbonWords(formats),
    shell: shellWords(formats),
    judge: judgeWords(formats),
  };
}
