import { type ReactNode, useSyncExternalStore } from 'react';
import { Button, IconButton } from '../controls/button.tsx';
import { useConnectionState, useLink, useTrouble } from '../desk/link.ts';
import { classNames } from '../look/class-names.ts';
import { Cross } from '../look/signs.tsx';
import { useWords } from '../words/words.tsx';
import { useIsFloor } from './floor.tsx';
import styles from './message-bar.module.css';
import { useNotices } from './notices.tsx';

/**
 * What the program has to say, over the page so that nothing moves: at the foot of the window; on a floor screen at its
 * top, away from the thumb, and there the state of the connection is the screen's own to show.
 */
export function MessageBar() {
  const words = useWords();
  const connection = useConnectionState();
  const trouble = useTrouble();
  const { outbox } = useLink();
  const refusal = useSyncExternalStore(outbox.trouble.subscribe, outbox.trouble.get);
  const storage = useSyncExternalStore(outbox.storage.subscribe, outbox.storage.get);
  const { notices, dismiss } = useNotices();
  const floor = useIsFloor();
  return (
    <div className={classNames(styles.bar, floor && styles.floor, 'no-print')} role="status">
      {notices.map((notice) => (
        <Message key={notice.id} problem={notice.kind === 'problem'}>
          <p>{notice.text}</p>
          {notice.undo === undefined ? null : (
            <Button
              weight="quiet"
              onClick={() => {
                notice.undo?.();
                dismiss(notice.id);
              }}
            >
              {words.common.undo}
            </Button>
          )}
          <IconButton label={words.shell.dismiss} onClick={() => dismiss(notice.id)}>
            <Cross />
          </IconButton>
        </Message>
      ))}
      {storage === 'memory' && !floor ? (
        <Message problem>
          <p>{words.shell.memoryOnly}</p>
        </Message>
      ) : null}
      {refusal === null || floor ? null : (
        <Message problem>
          <p>{refusal}</p>
        </Message>
      )}
      {connection === 'lost' && !floor ? (
        <Message problem>
          <p>{trouble ?? words.shell.lost}</p>
        </Message>
      ) : null}
    </div>
  );
}

function Message({ problem, children }: { problem: boolean; children: ReactNode }) {
  return <div className={classNames(styles.message, problem && styles.problem)}>{children}</div>;
}
