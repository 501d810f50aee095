import { useEffect, useRef } from 'react';
import { classNames } from '../../../parts/look/class-names.ts';

interface ClockTextProps {
  /** The text now; asked once a frame, outside React: a running clock must not draw the whole screen anew. */
  readonly read: () => string;
  readonly running: boolean;
  readonly label: string;
  readonly className?: string | undefined;
}

/** A clock that paints itself. Its length stands in `--length`, so that an hour still fits its place. */
export function ClockText({ read, running, label, className }: ClockTextProps) {
  const element = useRef<HTMLSpanElement>(null);
  const latest = useRef(read);
  useEffect(() => {
    latest.current = read;
  });
  useEffect(() => {
    let frame = 0;
    let shown = '';
    const paint = (): void => {
      const text = latest.current();
      if (element.current !== null && text !== shown) {
        element.current.textContent = text;
        if (text.length !== shown.length) element.current.style.setProperty('--length', String(text.length));
        shown = text;
      }
      if (running) frame = requestAnimationFrame(paint);
    };
    paint();
    return () => cancelAnimationFrame(frame);
  }, [running]);
  return (
    // A timer is not spoken as it changes; an output would read out every tenth of a second.
    <span ref={element} role="timer" aria-label={label} className={classNames('number', className)} />
  );
}
