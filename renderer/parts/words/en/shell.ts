import type { Formats } from '../formats.ts';

/** The frame around every area. */
export function shellWords(_formats: Formats) {
  return {
    product: 'Plumbline',
    areas: {
      judge: 'Judge',
      review: 'Review',
      eye: 'Train the eye',
      night: 'Judging night',
      standards: 'Standards',
      people: 'People',
      settings: 'Settings',
    },
    navigation: 'Areas',
    menu: 'Menu',
    skip: 'Skip to the content',
    help: 'Help',
    helpTitle: 'What do I do here?',
    helpKey: 'The ? key opens this help on every screen.',
    connecting: 'Reaching the desk…',
    lost: 'The desk does not answer. What you do is kept here and sent as soon as it is back.',
    memoryOnly: 'This browser keeps nothing for this page. Closing it loses what is not yet sent.',
    storage: (path: string) => `The database at ${path} cannot be written.`,
    demoLabel: 'Demo data',
    demo: 'Demo data of an invented gym. Your own data are elsewhere, untouched.',
    dismiss: 'Dismiss',
    notFound: 'There is nothing at this address.',
    broken: 'This screen broke.',
    brokenAdvice: 'Nothing that was acknowledged is lost. Go on from here, or load the program again.',
    brokenAgain: 'Show the screen again',
    reload: 'Load the program again',
    details: 'Details for a report',
  };
}
