import type { Formats } from '../formats.ts';

/** The page of a pad: a phone or tablet on a judging night. */
export function padWords({ plural }: Pick<Formats, 'plural'>) {
  return {
    title: 'Plumbline pad',
    asking: 'Asking the desk…',
    join: 'Join the judging night',
    code: 'Code',
    codeHint: 'Six letters and digits, shown at the desk. Each is good for one phone.',
    name: 'Your name, or the phone’s',
    nameHint: 'So that the desk knows which one this is.',
    send: 'Join',
    again: 'Try again',
    waiting: 'Joined',
    roles: { judge: 'Judge', shadow: 'Shadow judge', board: 'Board' },
    noLane: 'no lane yet',
    between: 'No heat is open on this lane yet. Stay on this page.',
    heat: (heat: number) => `Heat ${heat}`,
    athlete: 'Athlete',
    judge: 'Judge',
    station: 'Station',
    connected: 'The desk is there.',
    connecting: 'Reaching the desk…',
    unsent: (count: number) =>
      plural(count, { one: '1 call waits here for the desk', other: `${count} calls wait here for the desk` }),
    allSent: 'The desk has every call.',
    clock: (milliseconds: number) => `Clock aligned with the desk’s to ${milliseconds} ms.`,
    risks: {
      'page-does-not-come-back':
        'Do not reload or close this page now: without the desk it does not come back. Calls made so far are kept on this phone.',
      'calls-are-lost': 'This browser keeps nothing. Closing or reloading this page now loses the calls that wait.',
    },
    awake: 'Keep the screen lit',
    awakeStates: {
      off: 'The screen may go dark while you watch.',
      held: 'The screen stays lit.',
      likely: 'The screen should stay lit; not every phone obeys. To be sure, set its screen time-out longer.',
      'not-held': 'This browser cannot keep the screen lit. Set the phone’s screen time-out longer.',
    },
  };
}
