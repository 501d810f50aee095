import { useId } from 'react';
import { Button } from '../controls/button.tsx';
import { Dialog } from '../controls/dialog.tsx';
import { useWords } from '../words/words.tsx';
import styles from './help-panel.module.css';
import type { Help } from './page.tsx';

/** Answers "what do I do here", beside the screen it speaks of. */
export function HelpPanel({ open, help, onClose }: { open: boolean; help: Help; onClose: () => void }) {
  const words = useWords();
  const titleId = useId();
  return (
    <Dialog open={open} onClose={onClose} labelledBy={titleId} side>
      <h2 id={titleId}>{words.shell.helpTitle}</h2>
      <p>{help.about}</p>
      <ol className={styles.steps}>
        {help.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p className={styles.key}>{words.shell.helpKey}</p>
      <div>
        <Button weight="main" onClick={onClose}>
          {words.common.close}
        </Button>
      </div>
    </Dialog>
  );
}
