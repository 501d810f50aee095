import { cautionsWords } from './en/cautions.ts';
import { commonWords } from './en/common.ts';
import { eyeWords } from './en/eye.ts';
import { judgeWords } from './en/judge.ts';
import { keysWords } from './en/keys.ts';
import { ledgerWords } from './en/ledger.ts';
import { nightWords } from './en/night.ts';
import { padWords } from './en/pad.ts';
import { peopleWords } from './en/people.ts';
import { reviewWords } from './en/review.ts';
import { ribbonWords } from './en/ribbon.ts';
import { settingsWords } from './en/settings.ts';
import { shellWords } from './en/shell.ts';
import { standardsWords } from './en/standards.ts';
import type { Formats } from './formats.ts';

/** English, composed of one file an area. */
export function en(formats: Formats) {
  return {
    common: commonWords(formats),
    keys: keysWords(formats),
    cautions: cautionsWords(),
    settings: settingsWords(formats),
    ledger: ledgerWords(formats),
    ribbon: ribbonWords(formats),
    review: reviewWords(formats),
    standards: standardsWords(formats),
    pad: padWords(formats),
    people: peopleWords(formats),
    shell: shellWords(formats),
    judge: judgeWords(formats),
    eye: eyeWords(formats),
    night: nightWords(formats),
  };
}
