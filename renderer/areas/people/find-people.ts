import type { PersonLine } from '../../../shared-types/contract/people.ts';
import { findOptions } from '../../parts/controls/find-options.ts';

/** The lines whose name, nickname or notes hold every typed word, by name. */
export function findPeople(
  lines: readonly PersonLine[],
  text: string,
  compare: (one: string, other: string) => number,
): readonly PersonLine[] {
  const byId = new Map(lines.map((line) => [line.person.id, line]));
  const options = lines.map(({ person }) => ({
    id: person.id,
    label: person.name,
    detail: `${person.nickname} ${person.notes}`,
  }));
  const found = text.trim() === '' ? options : findOptions(options, text);
  return found
    .flatMap(({ id }) => byId.get(id) ?? [])
    .toSorted((one, other) => compare(one.person.name, other.person.name));
}
