/** The forms of a word by plural category (CLDR names); `other` serves where no nearer one is given. */
export interface PluralForms {
  readonly zero?: string;
  readonly one?: string;
  readonly two?: string;
  readonly few?: string;
  readonly many?: string;
  readonly other: string;
}

/** Space that keeps a figure and its unit on one line. */
const joiner = '\u00a0';

/**
 * Numbers, units, dates and plurals as a locale writes them. Unit symbols are those of the SI, the same in every
 * language. A figure that is not finite is shown as a dash.
 */
export function formatsFor(locale: string) {
  const decimals = new Map<number, Intl.NumberFormat>();
  const decimal = (digits: number): Intl.NumberFormat => {
    const known = decimals.get(digits);
    if (known !== undefined) return known;
    const made = new Intl.NumberFormat(locale, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      // What rounds to nothing has no sign.
      signDisplay: 'negative',
    });
    decimals.set(digits, made);
    return made;
  };
  const upTo = new Intl.NumberFormat(locale, { maximumFractionDigits: 3, signDisplay: 'negative' });
  /** English writes a hyphen where its own typography wants a minus. */
  const signed = (text: string): string => text.replace(/^-/, '−');
  const day = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric' });
  const shortDay = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short' });
  const month = new Intl.DateTimeFormat(locale, { month: 'short', year: 'numeric' });
  const minute = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' });
  const rules = new Intl.PluralRules(locale);
  const lists = new Intl.ListFormat(locale, { type: 'conjunction' });
  const collator = new Intl.Collator(locale, { numeric: true, sensitivity: 'base' });

  const number = (value: number, digits = 0): string =>
    Number.isFinite(value) ? signed(decimal(digits).format(value)) : '–';
  const withUnit = (value: string, unit: string): string => `${value}${joiner}${unit}`;

  return {
    locale,
    /** With exactly so many decimals. */
    number,
    /** With as many decimals as the figure has, three at most. */
    plain: (value: number): string => (Number.isFinite(value) ? signed(upTo.format(value)) : '–'),
    /** A share from 0 to 1, as per cent. */
    percent: (share: number, digits = 0): string => withUnit(number(share * 100, digits), '%'),
    /** Seconds, with one decimal unless told otherwise. */
    seconds: (value: number, digits = 1): string => withUnit(number(value, digits), 's'),
    metres: (value: number, digits = 2): string => withUnit(number(value, digits), 'm'),
    kilograms: (value: number): string => withUnit(Number.isFinite(value) ? upTo.format(value) : '–', 'kg'),
    /** A clock from milliseconds: 2:31.4, or 1:02:31 with no decimals. Cut, not rounded, as a stopwatch does. */
    duration: (milliseconds: number, digits: 0 | 1 | 2 | 3 = 1): string => clock(milliseconds, digits, locale),
    /** From milliseconds since 1970 UTC, in the user's own time zone. */
    date: (at: number): string => day.format(at),
    shortDate: (at: number): string => shortDay.format(at),
    month: (at: number): string => month.format(at),
    dateTime: (at: number): string => minute.format(at),
    plural: (count: number, forms: PluralForms): string => forms[rules.select(count)] ?? forms.other,
    list: (items: readonly string[]): string => lists.format(items),
    /** Order of names, for `toSorted`. */
    compare: (one: string, other: string): number => collator.compare(one, other),
  };
}
export type Formats = ReturnType<typeof formatsFor>;

const points = new Map<string, string>();

function decimalPoint(locale: string): string {
  const known = points.get(locale);
  if (known !== undefined) return known;
  const part = new Intl.NumberFormat(locale).formatToParts(1.5).find((item) => item.type === 'decimal');
  const point = part?.value ?? '.';
  points.set(locale, point);
  return point;
}

function clock(milliseconds: number, digits: 0 | 1 | 2 | 3, locale: string): string {
  if (!Number.isFinite(milliseconds)) return '–';
  const sign = milliseconds < 0 ? '−' : '';
  const whole = Math.floor(Math.abs(milliseconds));
  const hours = Math.floor(whole / 3_600_000);
  const minutes = Math.floor(whole / 60_000) % 60;
  const seconds = String(Math.floor(whole / 1_000) % 60).padStart(2, '0');
  const fraction = String(whole % 1_000)
    .padStart(3, '0')
    .slice(0, digits);
  const ending = digits === 0 ? '' : decimalPoint(locale) + fraction;
  const beginning = hours === 0 ? String(minutes) : `${hours}:${String(minutes).padStart(2, '0')}`;
  return `${sign}${beginning}:${seconds}${ending}`;
}
