import type { ReactNode } from 'react';
import { Button, IconButton } from '../controls/button.tsx';
import { useConnectionState, useTrouble } from '../desk/link.ts';
import { classNames } from '../look/class-names.ts';
import { Cross } from '../look/signs.tsx';
import { useWords } from '../words/words.tsx';
import styles from './message-bar.module.css';
import { useNotices } from './notices.tsx';

/** What the program has to say, at the foot of the window, over the page so that nothing moves. */
export function MessageBar() {
  const words = useWords();
  const connection = useConnectionState();
  const trouble = useTrouble();
  const { notices, dismiss } = useNotices();
  return (
    <div className={classNames(styles.bar, 'no-print')} role="status">
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
      {connection === 'lost' ? (
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
