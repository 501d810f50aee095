import type { ReactNode } from 'react';
import styles from './keys.module.css';

/** A key as it looks on the board. */
export function KeyCap({ children }: { children: ReactNode }) {
  return <kbd className={styles.cap}>{children}</kbd>;
}
