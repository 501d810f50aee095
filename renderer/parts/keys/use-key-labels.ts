import { useEffect, useState } from 'react';
import { keyLabel } from './bindings.ts';

/** The browser's map from a key's place to what is printed on it; only browsers of the Chromium family have it. */
interface KeyboardWithLayout {
  getLayoutMap(): Promise<ReadonlyMap<string, string>>;
}

function layoutOf(browser: Navigator): KeyboardWithLayout | null {
  return 'keyboard' in browser ? (browser.keyboard as KeyboardWithLayout) : null;
}

/** What is printed on a key of the user's own keyboard, where the browser knows its layout. */
export function useKeyLabels(): (code: string) => string {
  const [layout, setLayout] = useState<ReadonlyMap<string, string> | null>(null);
  useEffect(() => {
    layoutOf(navigator)
      ?.getLayoutMap()
      .then(setLayout, () => setLayout(null));
  }, []);
  return (code) => {
    const printed = /^(?:Key|Digit|Numpad)/.test(code) && !code.startsWith('Numpad') ? layout?.get(code) : undefined;
    return printed?.toLocaleUpperCase() ?? keyLabel(code);
  };
}
