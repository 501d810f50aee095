/** Reads a figure that a person typed, with a comma or a point; null where it is none or lies outside the bounds. */
export function readNumber(text: string, low: number, high: number): number | null {
  const clean = text.trim().replace(',', '.');
  if (!/^\d+(\.\d+)?$|^\.\d+$/.test(clean)) return null;
  const value = Number(clean);
  return value >= low && value <= high ? value : null;
}

/** Reads a span as minutes and seconds, "5:00" or "0:45", or as minutes alone, "5" or "2.5"; milliseconds or null. */
export function readSpan(text: string): number | null {
  const parts = /^(\d{1,4}):([0-5]\d)$/.exec(text.trim());
  const minutes = parts === null ? readNumber(text, 0, 1_440) : Number(parts[1]) + Number(parts[2]) / 60;
  if (minutes === null) return null;
  const milliseconds = Math.round(minutes * 60_000);
  return milliseconds >= 1_000 && milliseconds <= 86_400_000 ? milliseconds : null;
}
