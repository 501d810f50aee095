import path from 'node:path';
import type { DeskProblem } from '../desk/desk.ts';
import type { Mend } from './options.ts';

/** A damaged database, with what can be done about it. */
export type Damaged = NonNullable<DeskProblem['damaged']>;

/** Does what the user asked for; answers in a sentence. Rejects with a sentence, having changed nothing. */
export async function mendDatabase(damaged: Damaged, mend: Mend): Promise<string> {
  if (mend.kind === 'start-empty') {
    const { setAsideTo } = damaged.startEmpty();
    return `An empty database was begun. The damaged one is kept as ${setAsideTo}.`;
  }
  const copy = mend.copy ?? damaged.lastGood?.path ?? null;
  if (copy === null) throw new Error('There is no sound copy to restore.');
  const { setAsideTo } = await damaged.restoreCopy(copy);
  return `The copy ${copy} was put in place. The damaged database is kept as ${setAsideTo}.`;
}

/** What the user of a terminal can do about a damaged database. */
export function mendingAdvice(damaged: Damaged): string {
  const lines = ['You can', ''];
  if (damaged.lastGood !== null) lines.push('  npm start -- --restore last       put the last good copy in its place');
  for (const { path: file } of damaged.copies.slice(0, 5)) {
    lines.push(`  npm start -- --restore ${path.basename(file)}`);
  }
  lines.push('  npm start -- --start-empty        begin an empty database', '');
  lines.push('The damaged file is renamed and kept in any case. Copy it elsewhere first if somebody is to look at it.');
  return lines.join('\n');
}
