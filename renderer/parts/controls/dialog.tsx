import { type ReactNode, useEffect, useRef } from 'react';
import { classNames } from '../look/class-names.ts';
import styles from './dialog.module.css';

interface DialogProps {
  readonly open: boolean;
  /** The user closed it: Escape, the back gesture, or a press beside it. */
  readonly onClose: () => void;
  readonly labelledBy: string;
  readonly describedBy?: string;
  /** Stands at the window's side instead of its middle. */
  readonly side?: boolean;
  /** Only a deed inside closes it, not a press beside it. */
  readonly firm?: boolean;
  readonly children: ReactNode;
}

/** The browser's own modal dialog: it keeps the focus, and gives it back. Its content exists only while it is open. */
export function Dialog({ open, onClose, labelledBy, describedBy, side, firm, children }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = element.current;
    if (dialog === null) return;
    if (open && !dialog.open) dialog.showModal();
    if (!open && dialog.open) dialog.close();
  }, [open]);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the press beside the dialog has its key, Escape, from the browser.
    <dialog
      ref={element}
      className={classNames(styles.dialog, side && styles.side, 'no-print')}
      aria-labelledby={labelledBy}
      aria-describedby={describedBy}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        if (event.target === element.current && firm !== true) onClose();
      }}
    >
      {open ? <div className={styles.content}>{children}</div> : null}
    </dialog>
  );
}
