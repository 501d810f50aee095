import type { Formats } from '../formats.ts';

/** Words that several areas share. */
export function commonWords({ number, plural }: Formats) {
  return {
    save: 'Save',
    cancel: 'Cancel',
    close: 'Close',
    back: 'Back',
    print: 'Print',
    again: 'Try again',
    add: 'Add',
    edit: 'Edit',
    remove: 'Remove',
    undo: 'Undo',
    search: 'Search',
    clear: 'Clear',
    none: 'None',
    optional: 'optional',
    reading: 'Reading…',
    saving: 'Saving…',
    archived: 'archived',
    readFailed: 'This could not be read.',
    saveFailed: 'This could not be saved.',
    unknownFailure: 'Something went wrong that the program has no words for.',
    badInput: 'The desk refused this as it stands. Check what you entered.',
    noMatch: 'Nobody of that name.',
    matches: (count: number) => `${number(count)} ${plural(count, { one: 'match', other: 'matches' })}`,
    /** From low to high. */
    span: (low: string, high: string) => `${low} to ${high}`,
    /** A value with its interval. */
    within: (value: string, low: string, high: string) => `${value} (${low} to ${high})`,
    tagHint: 'Type a word and press Enter.',
    removeTag: (tag: string) => `Remove ${tag}`,
    valuesAsTable: 'Values as a table',
    howComputed: 'How is this computed?',
    athlete: 'Athlete',
    judge: 'Judge',
    counted: 'Counted',
    noRep: 'No-rep',
    caution: 'Counted with caution',
    withdrawn: 'Withdrawn',
    noReason: 'no reason yet',
    sets: (count: number) => `${number(count)} ${plural(count, { one: 'set', other: 'sets' })}`,
    rulebook: 'Your event’s own rulebook and head judge decide.',
  };
}
