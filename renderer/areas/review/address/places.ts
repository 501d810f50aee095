import { type Choice, writeChoice } from './choice.ts';

/** A place with its choices, within the area. */
export function placeWith(path: string, choice: Choice, more: Readonly<Record<string, string>> = {}): string {
  const params = new URLSearchParams();
  writeChoice(params, choice);
  for (const [name, value] of Object.entries(more)) if (value !== '') params.set(name, value);
  const query = params.toString();
  return query === '' ? path : `${path}?${query}`;
}

/** Where the area Judge shows a set, from anywhere. */
export function setPlace(id: string): string {
  return `~/judge/set/${id}`;
}
