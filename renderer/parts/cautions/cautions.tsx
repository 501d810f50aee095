import { useId } from 'react';
import { Button } from '../controls/button.tsx';
import { Dialog } from '../controls/dialog.tsx';
import { useSettings } from '../desk/settings.tsx';
import { useWords } from '../words/words.tsx';
import styles from './cautions.module.css';

/** The cautions as a list: in the dialog, and on every printed sheet. */
export function CautionsList() {
  const words = useWords().cautions;
  return (
    <ul className={styles.list}>
      {words.items.map((item) => (
        <li key={item}>{item}</li>
      ))}
    </ul>
  );
}

/** The cautions in a dialog that only its own button closes. */
export function CautionsDialog({ open, onRead }: { open: boolean; onRead: () => void }) {
  const words = useWords().cautions;
  const titleId = useId();
  return (
    <Dialog open={open} onClose={onRead} labelledBy={titleId} firm>
      <h2 id={titleId}>{words.title}</h2>
      <CautionsList />
      <div>
        <Button weight="main" large onClick={onRead}>
          {words.read}
        </Button>
      </div>
    </Dialog>
  );
}

/** Put this on the screen that leads to a set: it shows the cautions until they have been read once. */
export function CautionsOnce() {
  const { settings, ready, put } = useSettings();
  return (
    <CautionsDialog
      open={ready && settings.cautionsReadAt === null}
      onRead={() => void put({ cautionsReadAt: Date.now() })}
    />
  );
}
