import { useSyncExternalStore } from 'react';
import type { SetLog } from '../../../link/set-log.ts';
import { useConnectionState, useLink } from '../../../parts/desk/link.ts';
import { useWords } from '../../../parts/words/words.tsx';
import { useFramed } from '../use-framed.ts';
import styles from './link-state.module.css';

/** Whether every call is safe at the desk: small, always in sight, in words. */
export function LinkState({ log, awake }: { log: SetLog; awake: boolean }) {
  const words = useWords().judge.live;
  const { outbox } = useLink();
  const connection = useConnectionState();
  const pending = useFramed(log.pending, 0);
  const storage = useSyncExternalStore(outbox.storage.subscribe, outbox.storage.get);
  const trouble = useSyncExternalStore(outbox.trouble.subscribe, outbox.trouble.get);
  const lost = connection === 'lost';
  const text = lost ? words.link.waiting(pending) : pending > 0 ? words.link.sending(pending) : words.link.saved;
  return (
    <p className={styles.link} data-lost={lost || trouble !== null} data-testid="link-state">
      <span className={styles.dot} data-state={lost ? 'lost' : pending > 0 ? 'sending' : 'saved'} aria-hidden="true" />
      <span>{text}</span>
      {trouble === null ? null : <span>{trouble}</span>}
      {storage === 'memory' ? <span>{words.link.memoryOnly}</span> : null}
      {awake ? null : <span>{words.wake.lost}</span>}
    </p>
  );
}
