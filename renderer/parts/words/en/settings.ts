import type { Formats } from '../formats.ts';

export function settingsWords(_formats: Formats) {
  return {
    title: 'Settings',
    look: 'Look',
    looks: { system: 'As the computer', paper: 'Paper, light', hall: 'Hall, dark' },
    lookHint: 'As the computer: the Judge screen is dark all the same, against glare.',
    sound: 'Sound',
    sounds: 'A sound for each call',
    soundsHint: 'Counted, no-rep and caution can be told apart without looking.',
    spoken: 'Say the count aloud',
    countdown: 'Countdown before go',
    countdownError: 'Whole seconds from 0 to 60.',
    secondsUnit: 's',
    program: 'This program',
    version: 'Version',
    database: 'Database',
    databaseHint: 'Your sets, people and sheets lie in this file.',
    host: 'Runs as',
    hosts: { electron: 'a desktop program', browser: 'a page in your browser, served by this computer' },
    help: {
      about: 'How the program looks, sounds and answers to keys. Every change holds at once.',
      steps: [
        'Choose a look. Paper reads best at a desk, hall in a bright or dim gym.',
        'Set the sounds and the countdown as your floor needs them.',
        'Bind a clicker or pedal: “Add a key” beside the call, then press it.',
      ],
    },
  };
}
