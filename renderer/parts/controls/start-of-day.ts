/** Local midnight at the begin of a day, or of the day after it; milliseconds since 1970 UTC, null where it is no day. */
export function startOfDay(text: string, after = 0): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return null;
  // The next day's own midnight, not 24 hours later: days with a change of the clocks are shorter or longer.
  const at = new Date(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3]) + after).getTime();
  return Number.isFinite(at) ? at : null;
}
