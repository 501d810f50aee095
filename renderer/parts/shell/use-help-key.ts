import { useEffect, useEffectEvent } from 'react';

/** Whether a key press belongs to what has the focus: a text being typed, or an open dialog. */
function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || /^(?:INPUT|TEXTAREA|SELECT)$/.test(target.tagName);
}

/** The ? key, wherever a keyboard has it. */
export function useHelpKey(onHelp: () => void): void {
  const help = useEffectEvent(onHelp);
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== '?' || event.defaultPrevented || isTyping(event.target)) return;
      event.preventDefault();
      help();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
