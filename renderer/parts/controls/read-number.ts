/** Reads a plain decimal number with a point or a comma; null where the text is none. */
export function readNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(/[\s\u00a0\u202f]/g, '')
    .replace('−', '-')
    .replace(',', '.');
  return /^-?(?:\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}
