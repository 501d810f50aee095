import type { Formats } from '../formats.ts';

/** "About so many": two figures say as much as such an estimate knows. */
export function roughlyIn({ number }: Formats): (count: number) => string {
  return (count) => {
    const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, count))) - 1);
    return number(Math.ceil(count / step) * step);
  };
}
