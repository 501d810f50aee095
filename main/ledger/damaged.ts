import { check } from './check.ts';
import { type Copy, listCopies } from './copies.ts';
import type { Lock } from './lock.ts';
import { SCHEMA_VERSION } from './migrations/list.ts';
import { putInPlace, setAside, soundCopy } from './restore.ts';

/**
 * A database that is damaged or gone. Nothing happens to it until the user has decided; the lock is held until then. After
 * `restoreCopy`, `setAsideOnly` or `close` this is used up: open the ledger again.
 */
export interface DamagedLedger {
  readonly state: 'damaged';
  readonly path: string;
  /** What was found, in phrases for a person to read. */
  readonly problems: readonly string[];
  /** Every copy, newest first. */
  readonly copies: readonly Copy[];
  /** The newest copy that was read whole and found sound; null where there is none. */
  readonly lastGood: Copy | null;
  /** Renames the database to a dated name and puts the copy in its place. Errors: `unknown-copy`, `damaged`, `newer`, `full`. */
  restoreCopy(copy: string): Promise<SetAside>;
  /** Renames the database to a dated name and begins an empty one. The copies stay. */
  startEmpty(): SetAside;
  /** Leaves everything as it is. */
  close(): void;
}

export interface SetAside {
  /** The new name of the damaged database. */
  readonly setAsideTo: string;
}

export async function damagedLedger(
  path: string,
  problems: readonly string[],
  lock: Lock,
  createEmpty: () => void,
  now: () => number,
): Promise<DamagedLedger> {
  const copies = listCopies(path);
  return {
    state: 'damaged',
    path,
    problems,
    copies,
    lastGood: await newestSound(copies),
    restoreCopy: async (name) => {
      const copy = await soundCopy(path, name);
      const setAsideTo = setAside(path, now());
      putInPlace(path, copy);
      lock.release();
      return { setAsideTo };
    },
    startEmpty: () => {
      const setAsideTo = setAside(path, now());
      createEmpty();
      lock.release();
      return { setAsideTo };
    },
    close: () => lock.release(),
  };
}

async function newestSound(copies: readonly Copy[]): Promise<Copy | null> {
  for (const copy of copies) {
    const found = await check({ path: copy.path, depth: 'full', seal: false });
    if (found.kind === 'ours' && found.version <= SCHEMA_VERSION) return copy;
  }
  return null;
}
