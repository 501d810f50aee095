import { readNumber } from './read-number.ts';

/** Reads a span as minutes and seconds, "5:00" or "0:45", or as minutes alone, "5" or "2.5"; milliseconds or null. */
export function readSpan(text: string): number | null {
  const parts = /^(\d{1,4}):([0-5]\d)$/.exec(text.trim());
  const minutes = parts === null ? readNumber(text) : Number(parts[1]) + Number(parts[2]) / 60;
  if (minutes === null) return null;
  const milliseconds = Math.round(minutes * 60_000);
  return milliseconds >= 1_000 && milliseconds <= 86_400_000 ? milliseconds : null;
}
