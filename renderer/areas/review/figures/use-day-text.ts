import { useFormats } from '../../../parts/words/words.tsx';

const longSpanMs = 300 * 86_400_000;

/** How a day is written on an axis: without its year where all lie within one, as a month where they span years. */
export function useDayText(at: readonly number[]): (moment: number) => string {
  const { shortDate, month } = useFormats();
  const [first, last] = [at[0], at.at(-1)];
  return first !== undefined && last !== undefined && last - first > longSpanMs ? month : shortDate;
}
