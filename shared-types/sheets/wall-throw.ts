import type { StandardSheet } from './sheet.ts';

/** Wall throw. Loads, lines and tolerances: common practice, no source; a gym publishes its own version to change them. */
export const wallThrow: StandardSheet = {
  id: 'wall-throw',
  version: 1,
  station: 'Wall throw',
  repsName: 'throws',
  movement: 'wall-throw',
  summary:
    'Stand tall with the ball, squat until the hip crease is below the top of the knee, drive up and throw so that the ball reaches the target line, catch it and go on. The rulebook of your own event decides.',
  goals: ['reps', 'clock', 'open'],
  usualGoal: { kind: 'reps', amount: 100 },
  consequence: { kind: 'repeat' },
  loadsKg: [4, 6, 9],
  heightsM: [2.7, 3, 3.05],
  heightName: 'Target line',
  markEveryM: null,
  equipment: [
    'A soft throwing ball of the agreed load, without a split seam.',
    'A wall or rig that takes the ball, with the target line marked and measured from the floor.',
    'Two metres of clear floor behind and to both sides of the athlete.',
  ],
  cautions: [
    'Nobody stands in the rebound zone; the judge stands to the side, never behind the athlete.',
    'Catch with soft elbows and eyes on the ball: a missed catch lands on the face.',
    'Stop when the back rounds under the ball or the knees fall inwards.',
  ],
  faults: [
    {
      code: 'line',
      name: 'Below the line',
      initial: 'L',
      standard: 'The ball reaches the target line: its centre is at the line or above it when it meets the wall.',
      stand: 'Beside the athlete, two to three metres back from the wall, eyes as high as you can get them.',
      look: 'The centre of the ball at the wall, against the line; let your eye wait there before the ball arrives.',
      cue: 'Higher!',
      remedy:
        'Throw sets of ten at a line 20 cm above the race line; drive from the legs and let the arms finish late. When only the last third is low, train longer sets rather than a higher line.',
      bodyHeight: 1,
      margin: {
        quantity: 'height of the ball’s centre above the line at its highest point',
        unit: 'cm',
        direction: 'below zero the ball stays under the line',
        tolerance: 0,
      },
    },
    {
      code: 'aim',
      name: 'Beside the target',
      initial: 'A',
      standard: 'The ball meets the wall within the width of the target.',
      stand: 'Behind and beside the athlete, in line with the edge of the target.',
      look: 'Where the ball touches, against the nearer edge of the target.',
      cue: 'Centre!',
      remedy:
        'Mark the feet and the middle of the target with tape; throw sets of five with the ball released from the middle of the chest, both hands leaving together.',
      bodyHeight: 0.9,
      margin: {
        quantity: 'distance of the ball’s centre inside the nearer edge of the target',
        unit: 'cm',
        direction: 'below zero the ball lands beside the target',
        tolerance: 0,
      },
    },
    {
      code: 'stand',
      name: 'Not standing tall',
      initial: 'T',
      standard: 'Each rep begins from standing: hips and knees open before the squat.',
      stand: 'At the athlete’s side, at a right angle to the throw.',
      look: 'Hip and knee just before the athlete goes down; a hip that never opens is the sign.',
      cue: 'Stand tall!',
      remedy:
        'Practise catch, stand, breathe, squat in four counts; then take the pauses out one by one without losing the stand.',
      bodyHeight: 0.66,
      margin: {
        quantity: 'how much farther the hip opens than the least allowed, at the start of the rep',
        unit: 'degrees',
        direction: 'below zero the hip is still bent when the rep begins',
        tolerance: 0,
      },
    },
    {
      code: 'depth',
      name: 'Not deep enough',
      initial: 'D',
      standard: 'At the bottom the hip crease is below the top of the knee.',
      stand: 'At the athlete’s side, at a right angle to the throw, eyes at the height of the knee.',
      look: 'The crease of the hip against the top of the knee at the lowest point; not the thigh, not the ball.',
      cue: 'Lower!',
      remedy:
        'Squat with the ball to a box just below race depth, sets of ten; take the box away and keep the depth. Work on ankle reach if the heels lift.',
      bodyHeight: 0.5,
      margin: {
        quantity: 'how far the hip crease is below the top of the knee at the lowest point',
        unit: 'cm',
        direction: 'below zero the hip stays above the knee',
        tolerance: 0,
      },
    },
    {
      code: 'bounce',
      name: 'Off the bounce',
      initial: 'B',
      standard: 'A dropped ball is picked up at rest; it is not taken off its bounce from the floor.',
      stand: 'At the athlete’s side, with ball and floor in view.',
      look: 'The ball between floor and hands: at rest before the hands close on it, or still rising.',
      cue: 'Let it rest!',
      remedy:
        'Plan the breaks before the set so that the ball is set down, not dropped; practise the pick-up: still ball, flat back, clean first rep.',
      bodyHeight: 0.06,
      margin: {
        quantity: 'allowed height less the measured height of the ball over the floor as the hands take it',
        unit: 'cm',
        direction: 'below zero the ball was taken off its bounce',
        tolerance: 0,
      },
    },
  ],
  shipped: true,
  createdAt: 0,
};
