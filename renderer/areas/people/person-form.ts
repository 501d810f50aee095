import type { Person } from '../../../shared-types/people.ts';
import type { Words } from '../../parts/words/words.tsx';

export type PersonEntry = Pick<Person, 'name' | 'nickname' | 'athlete' | 'judge' | 'notes'>;

export const emptyEntry: PersonEntry = { name: '', nickname: '', athlete: true, judge: false, notes: '' };

/** What the schema of a person allows. */
const most = 10_000;

export type EntryProblems = Partial<Record<'name' | 'nickname' | 'role' | 'notes', string>>;

/** What is wrong with an entry, in words, by the field it is wrong in; empty where it can be saved. */
export function entryProblems(entry: PersonEntry, words: Words['people']): EntryProblems {
  const problems: EntryProblems = {};
  const tooLong = (text: string): boolean => text.trim().length > most;
  if (entry.name.trim() === '') problems.name = words.nameMissing;
  else if (tooLong(entry.name)) problems.name = words.tooLong(most);
  if (tooLong(entry.nickname)) problems.nickname = words.tooLong(most);
  if (entry.notes.length > most) problems.notes = words.tooLong(most);
  if (!entry.athlete && !entry.judge) problems.role = words.roleMissing;
  return problems;
}
