import { crc32 } from 'node:zlib';

/** The one JSON text of a value: keys sorted at every level, so that equal values have equal bytes. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/** CRC-32 of a text's UTF-8 bytes: tells a flipped bit from what was written, as SQLite itself does not. */
export function checksum(text: string): number {
  return crc32(text);
}

/** Lower case without diacritics, so that a search for "zoe" finds "Zoë". */
export function foldText(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}
