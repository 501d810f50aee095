/** Joins the class names that are there, with a space between; undefined where none is. */
export function classNames(...names: readonly (string | false | null | undefined)[]): string | undefined {
  const given = names.filter((name) => typeof name === 'string' && name !== '');
  return given.length === 0 ? undefined : given.join(' ');
}
