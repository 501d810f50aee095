import type { Consequence, StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import type { Formats } from '../formats.ts';
import { standardsFormWords } from './standards-form.ts';

/** Reading standard sheets. */
export function standardsWords(formats: Formats) {
  const { number, plain, plural, metres, kilograms, duration, list } = formats;
  const goalKinds = { reps: 'counted reps', metres: 'metres', clock: 'against the clock', open: 'open end' };
  return {
    title: 'Standards',
    intro: 'What counts at each station, and how to judge it.',
    write: 'Write a sheet',
    emptyTitle: 'No sheet yet',
    emptyText: 'A sheet says what one rep is, which faults break it, and where the judge stands to see them.',
    back: 'All sheets',
    version: (version: number) => `Version ${number(version)}`,
    versionOf: (version: number, date: string) => `Version ${number(version)}, ${date}`,
    versionShipped: (version: number) => `Version ${number(version)}, as shipped`,
    faultCount: (count: number) => `${number(count)} ${plural(count, { one: 'fault', other: 'faults' })}`,
    old: (latest: number) => `This is an earlier version; the sheet now stands at version ${number(latest)}.`,
    showLatest: 'Show the latest',
    missing: 'There is no such sheet.',
    rulebook: 'Your event’s own rulebook decides. This sheet is for practice; change what differs.',
    rulebookAll: 'Your event’s own rulebook decides. These sheets are for practice; change what differs.',
    oneRep: 'One rep',
    faults: 'Faults, from high to low',
    code: 'Code',
    standard: 'Standard',
    stand: 'Stand',
    look: 'Look at',
    cue: 'Shout',
    remedy: 'Train',
    margin: 'Measure',
    marginText: (quantity: string, unit: string, direction: string, tolerance: number) =>
      `${capital(quantity)}, in ${unit}; ${direction}.${tolerance === 0 ? '' : ` Benefit of the doubt within ${plain(tolerance)} ${unit}.`}`,
    units: { cm: 'cm', ms: 'ms', degrees: 'degrees' },
    goals: 'Goals',
    goalList: (goals: StandardSheet['goals']) => list(goals.map((goal) => goalKinds[goal])),
    usual: 'Usually',
    usualGoal: ({ kind, amount }: StandardSheet['usualGoal']) =>
      ({
        reps: `${plain(amount)} reps`,
        metres: `${plain(amount)} m`,
        clock: duration(amount, 0),
        open: 'open end',
      })[kind],
    noRep: 'A no-rep',
    consequence: (consequence: Consequence): string => {
      switch (consequence.kind) {
        case 'repeat':
          return 'is done again';
        case 'metres-back':
          return `costs ${plain(consequence.metres)} m back`;
        case 'seconds-added':
          return `adds ${plain(consequence.seconds)} s`;
      }
    },
    loads: 'Loads',
    loadList: (loads: readonly number[]) => list(loads.map(kilograms)),
    heights: (name: string) => (name === '' ? 'Height' : name),
    heightList: (heights: readonly number[]) => list(heights.map((height) => metres(height))),
    marks: 'Marks on the lane',
    markEvery: (every: number) => `every ${plain(every)} m`,
    equipment: 'What is needed',
    cautions: 'Cautions at this station',
    generalCautions: 'Cautions everywhere',
    printSheet: 'Print the briefing',
    cueCard: 'Cue card',
    cueCardTitle: (station: string) => `${station}: cue card`,
    cueCardIntro: 'One page for the judge’s pocket.',
    fault: 'No-rep if',
    where: 'Where and what',
    next: 'Write the next version',
    versions: 'Versions and what changed',
    versionsTitle: (station: string) => `${station}: versions`,
    versionsBack: 'The sheet',
    firstVersion: 'The first version.',
    noChange: 'Nothing changed in the words.',
    was: 'Was',
    isNow: 'Is now',
    nothing: 'nothing',
    added: (name: string) => `New fault: ${name}`,
    removed: (name: string) => `Fault taken out: ${name}`,
    inFault: (name: string, field: string) => `${name}: ${field}`,
    fields: {
      station: 'Station',
      repsName: 'Name of the reps',
      movement: 'Movement',
      summary: 'One rep',
      goals: 'Goals',
      usualGoal: 'Usual goal',
      consequence: 'A no-rep',
      loadsKg: 'Loads',
      heightsM: 'Heights',
      heightName: 'What the height measures',
      markEveryM: 'Marks on the lane',
      equipment: 'What is needed',
      cautions: 'Cautions',
      order: 'Order of the faults',
      name: 'Name',
      initial: 'Letter',
      standard: 'Standard',
      stand: 'Stand',
      look: 'Look at',
      cue: 'Shout',
      remedy: 'Train',
      bodyHeight: 'Height on the body',
      margin: 'Measure',
    },
    form: standardsFormWords(formats),
    help: {
      about: 'The standard sheets: what counts, what does not, and how to see it.',
      steps: [
        'Open a sheet to read it. Each fault says where to stand, what to look at and what to shout.',
        'Print the briefing to read it to athletes, or the cue card for the judge’s pocket.',
        'Where your event differs, write the next version. Sets keep the version they were judged under.',
      ],
    },
  };
}

function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase('en') + text.slice(1);
}
