import { type ComponentProps, type ReactNode, useRef } from 'react';
import { eventTime } from '../../../link/clock.ts';
import { classNames } from '../../../parts/look/class-names.ts';
import styles from './press-button.module.css';

interface PressButtonProps extends Omit<ComponentProps<'button'>, 'onClick' | 'onPointerDown' | 'type'> {
  /** The press, with the time stamp of the input itself on the page's clock. */
  readonly onPress: (timeStamp: number) => void;
  readonly children: ReactNode;
}

/** Answers when it is touched, not when it is let go: a call carries the moment of the judge's decision. */
export function PressButton({ onPress, className, children, ...rest }: PressButtonProps) {
  const touched = useRef(false);
  return (
    <button
      {...rest}
      type="button"
      className={classNames(styles.press, className)}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        // Keeps the focus where it is, so that the keys go on calling after a press by mouse.
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
    </button>
  );
}
