import type { Formats } from '../formats.ts';

/** The plan of a judging night. */
export function nightPlanWords({ number, plural }: Formats) {
  const parts = { athlete: 'athlete', judge: 'judge', shadow: 'shadow' };
  return {
    make: 'Make the plan',
    again: 'Plan again',
    making: 'Working out the plan…',
    made: 'The plan is made. No hard rule is broken.',
    emptyTitle: 'No plan yet',
    emptyText: 'The desk works out who is where in each heat: nobody judges while competing or right before.',
    impossible: 'There is no plan that keeps every rule:',
    notFound: 'No plan was found in the time given:',
    useNearest: 'Take the nearest plan all the same',
    dropAnswer: 'Leave it as it was',
    nearestTaken: 'The nearest plan is taken. What it breaks is listed above it.',
    export: 'Export',
    exported: (file: string) => `${file} is saved.`,
    caption: 'The plan, heat by lane',
    heat: 'Heat',
    heatNumber: (heat: number) => `Heat ${number(heat)}`,
    lane: (name: string) => (/^\d+$/.test(name) ? `Lane ${name}` : name),
    free: 'Judges without a place',
    parts,
    begun: 'has begun',
    nobody: 'empty',
    partHeads: { athlete: '', judge: 'Judge', shadow: 'Shadow' },
    place: (name: string, part: keyof typeof parts, heat: number, lane: string) =>
      `${name}, ${parts[part]}, heat ${number(heat)}, ${lane}`,
    freePlace: (name: string, heat: number) => `${name}, without a place in heat ${number(heat)}`,
    how: 'To change the plan by hand, press two names: they change places. Dragging one onto the other does the same.',
    picked: (place: string) => `Taken up: ${place}. Now press whom to change with, or Escape.`,
    cannot: 'These two cannot change places.',
    changed: (one: string, other: string) => `${one} and ${other} have changed places.`,
    breachesTitle: (count: number) =>
      `${number(count)} ${plural(count, { one: 'hard rule is', other: 'hard rules are' })} broken`,
    kept: 'Every hard rule is kept.',
    aimsTitle: 'Allowed, but could be better',
    peopleTitle: 'Who is here',
    peopleHint:
      'Note who did not come, came after all or left. Then plan again: heats that have begun stay as they are.',
    state: (name: string) => `Where is ${name}?`,
    states: { expected: 'Expected', arrived: 'Arrived', 'no-show': 'Did not come', left: 'Left' },
    noted: (name: string, state: string) => `${name}: ${state}.`,
    help: {
      about: 'Who is where in each heat.',
      steps: [
        'Let the desk make the plan. Where none is possible it says what is short.',
        'Change it by hand: press two names, or drag one onto the other. Broken rules are named at once.',
        'Note under “Who is here” who did not come, came later or left, and plan again.',
        'Print it for the wall. Running the night on phones and tablets is still to come.',
      ],
    },
  };
}
