import { type ComponentProps, type ReactNode, useRef } from 'react';
import { eventTime } from '../../../link/clock.ts';
import { classNames } from '../../../parts/look/class-names.ts';
import styles from './press-button.module.css';

interface PressButtonProps extends Omit<ComponentProps<'button'>, 'onClick' | 'onPointerDown' | 'type'> {
  /** The press, with the time stamp of the input itself on the page's clock. */
  readonly onPress: (timeStamp: number) => void;
  /** Changes with every answered press of this button, by whatever input: it flashes. */
  readonly turn?: number | undefined;
  readonly children: ReactNode;
}

/**
 * A button that answers when it is touched, not when it is let go: a call must carry the moment of the judge's decision.
 * Each finger is a press of its own. The click that a browser sends after a touch is the same press and is left out;
 * one without a touch before it, from the keyboard or a screen reader, counts.
 */
export function PressButton({ onPress, turn, className, children, ...rest }: PressButtonProps) {
  const touched = useRef(false);
  return (
    <button
      {...rest}
      type="button"
      className={classNames(styles.press, className)}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        // Keeps the focus where it is, so that the space bar goes on counting after a fault was called by mouse.
        event.preventDefault();
        touched.current = true;
        onPress(eventTime(event.nativeEvent));
      }}
      onClick={(event) => {
        const ofTouch = touched.current && event.detail !== 0;
        touched.current = false;
        if (!ofTouch) onPress(eventTime(event.nativeEvent));
      }}
    >
      {children}
      {turn === undefined || turn === 0 ? null : <span key={turn} className={styles.flash} aria-hidden="true" />}
    </button>
  );
}
