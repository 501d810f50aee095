const rememberedAs = 'own-pads';
const kept = 20;

/** The names that this browser has written under, the present one last; a reload must not lose the way back by slips. */
export function ownPads(
  pad: string,
  storage: Pick<Storage, 'getItem' | 'setItem'> | null = storageHere(),
): ReadonlySet<string> {
  const known = read(storage).filter((item) => item !== pad);
  const pads = [...known, pad].slice(-kept);
  try {
    storage?.setItem(rememberedAs, JSON.stringify(pads));
  } catch {
    // A full or forbidden storage costs only the way back over a reload.
  }
  return new Set(pads);
}

function read(storage: Pick<Storage, 'getItem'> | null): string[] {
  try {
    const value: unknown = JSON.parse(storage?.getItem(rememberedAs) ?? '[]');
    return Array.isArray(value) ? value.filter((item) => typeof item === 'string') : [];
  } catch {
    return [];
  }
}

function storageHere(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
