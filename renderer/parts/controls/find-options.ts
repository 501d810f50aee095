export interface ComboOption {
  readonly id: string;
  readonly label: string;
  /** A second line, such as the full name under a nickname. It is searched too. */
  readonly detail?: string;
}

/** Text without case and accents, so that "Zoe" finds "Zoë". */
function plain(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** The options that hold every typed word, those that begin with the text first; all of them for an empty text. */
export function findOptions(options: readonly ComboOption[], text: string): readonly ComboOption[] {
  const wanted = plain(text).split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return options;
  const found = options.filter((option) => {
    const held = plain(`${option.label} ${option.detail ?? ''}`);
    return wanted.every((word) => held.includes(word));
  });
  const begins = (option: ComboOption): boolean => plain(option.label).startsWith(wanted[0] ?? '');
  return [...found.filter(begins), ...found.filter((option) => !begins(option))];
}
