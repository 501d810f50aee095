import type { Outcome } from '../live/decide.ts';

export type SoundName =
  | 'counted'
  | 'caution'
  | 'no-rep'
  | 'explained'
  | 'reversed'
  | 'slip'
  | 'put-back'
  | 'break-start'
  | 'break-end'
  | 'mark'
  | 'tick'
  | 'go'
  | 'finish'
  | 'nothing';

/** The sound that answers a press; the end of the set has its own and takes its place. */
export function soundOf(outcome: Outcome, ended: boolean): SoundName {
  if (ended && outcome.kind !== 'abandoned') return 'finish';
  switch (outcome.kind) {
    case 'counted':
    case 'caution':
    case 'no-rep':
    case 'explained':
    case 'reversed':
    case 'put-back':
    case 'mark':
    case 'nothing':
      return outcome.kind;
    case 'withdrawn':
      return 'slip';
    case 'break':
      return outcome.running ? 'break-start' : 'break-end';
    case 'finished':
      return 'finish';
    case 'abandoned':
      return 'slip';
  }
}

/** One note of a sound: hertz at its begin and end, seconds, loudness 0 to 1. */
export interface Note {
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly length: number;
  readonly gain: number;
  readonly shape: 'sine' | 'triangle' | 'square' | 'sawtooth';
}

function note(from: number, start: number, length: number, shape: Note['shape'], gain = 0.5, to = from): Note {
  return { from, to, start, length, gain, shape };
}

/**
 * The sounds, told apart by pitch, number and direction rather than by loudness: counted is one short high note, a no-rep
 * two low rough ones, a caution high then middle, a slip a fall, a break two even notes.
 */
export const sounds: Readonly<Record<SoundName, readonly Note[]>> = {
  counted: [note(1318, 0, 0.07, 'triangle')],
  caution: [note(1318, 0, 0.07, 'triangle'), note(880, 0.09, 0.12, 'triangle')],
  'no-rep': [note(196, 0, 0.11, 'sawtooth', 0.4), note(147, 0.13, 0.2, 'sawtooth', 0.4)],
  explained: [note(660, 0, 0.04, 'sine', 0.35), note(660, 0.06, 0.04, 'sine', 0.35)],
  reversed: [note(880, 0, 0.08, 'triangle'), note(147, 0.1, 0.24, 'sawtooth', 0.4)],
  slip: [note(740, 0, 0.22, 'sine', 0.5, 330)],
  'put-back': [note(330, 0, 0.22, 'sine', 0.5, 740)],
  'break-start': [note(523, 0, 0.1, 'sine'), note(523, 0.16, 0.1, 'sine')],
  'break-end': [note(523, 0, 0.1, 'sine'), note(784, 0.16, 0.1, 'sine')],
  mark: [
    note(988, 0, 0.06, 'square', 0.18),
    note(1175, 0.07, 0.06, 'square', 0.18),
    note(1480, 0.14, 0.1, 'square', 0.18),
  ],
  tick: [note(880, 0, 0.08, 'sine')],
  go: [note(1760, 0, 0.5, 'sine', 0.7)],
  finish: [note(784, 0, 0.14, 'triangle'), note(988, 0.16, 0.14, 'triangle'), note(1568, 0.32, 0.5, 'triangle', 0.6)],
  nothing: [note(220, 0, 0.04, 'sine', 0.25)],
};
