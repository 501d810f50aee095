import type { Action } from '../../keys/actions.ts';
import type { Formats } from '../formats.ts';

type OrdinaryAction = Exclude<Action, `fault-${string}`>;

/** The keys of the Judge screen. */
export function keysWords(_formats: Formats) {
  return {
    title: 'Keys while judging',
    about:
      'Press “Add a key”, then the key, clicker or pedal that shall do it. Clickers mostly send Page Up and Page Down.',
    actions: {
      count: 'Counted',
      caution: 'Counted with caution',
      'no-rep-later': 'No-rep, reason later',
      'last-was-no-rep': 'The last one was a no-rep',
      slip: 'Take back the last press',
      break: 'Break begins or ends',
      mark: 'Mark reached',
      finish: 'Finish the set',
      abandon: 'Abandon the set',
      help: 'Help',
    } satisfies Record<OrdinaryAction, string>,
    faultsOf: 'Faults of the sheet',
    addKey: 'Add a key',
    addKeyTo: (action: string) => `Add a key: ${action}`,
    pressNow: 'Press it now…',
    pressHint: 'Escape cancels.',
    notThatKey: 'That key is needed by the browser or the screen itself. Take another.',
    removeKey: (key: string, action: string) => `Remove ${key} from ${action}`,
    noKey: 'no key',
    takenFrom: (key: string, other: string) => `${key} was taken from “${other}”.`,
    bound: (key: string, action: string) => `${key}: ${action}`,
    defaults: 'Back to the usual keys',
    defaultsDone: 'The usual keys are back.',
  };
}
