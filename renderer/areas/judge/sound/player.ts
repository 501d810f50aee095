import { type Note, type SoundName, sounds } from './sounds.ts';

export interface Player {
  /** Sounds at once; silent where it is muted or the browser gives no audio. */
  play(name: SoundName): void;
  /** Browsers let a page sound only after an input: call it on one. */
  unlock(): void;
}

/** Loudest peak of one note, so that notes on top of each other do not clip. */
const loudest = 0.5;

/** Synthesises the sounds: nothing is loaded, nothing waits. `audible` is asked at every sound. */
export function createPlayer(audible: () => boolean): Player {
  let context: AudioContext | null = null;
  const wake = (): AudioContext | null => {
    if (typeof AudioContext === 'undefined') return null;
    context ??= new AudioContext({ latencyHint: 'interactive' });
    if (context.state === 'suspended') void context.resume().catch(() => {});
    return context;
  };
  return {
    play: (name) => {
      if (!audible()) return;
      const audio = wake();
      if (audio === null) return;
      for (const note of sounds[name]) sound(audio, note);
    },
    unlock: () => {
      wake();
    },
  };
}

function sound(audio: AudioContext, note: Note): void {
  const begin = audio.currentTime + note.start;
  const end = begin + note.length;
  const oscillator = audio.createOscillator();
  const gain = audio.createGain();
  oscillator.type = note.shape;
  oscillator.frequency.setValueAtTime(note.from, begin);
  if (note.to !== note.from) oscillator.frequency.exponentialRampToValueAtTime(note.to, end);
  // A few milliseconds of rise and a soft end: an abrupt edge would click.
  gain.gain.setValueAtTime(0, begin);
  gain.gain.linearRampToValueAtTime(note.gain * loudest, begin + 0.004);
  gain.gain.setValueAtTime(note.gain * loudest, begin + note.length * 0.6);
  gain.gain.linearRampToValueAtTime(0, end);
  oscillator.connect(gain).connect(audio.destination);
  oscillator.start(begin);
  oscillator.stop(end + 0.02);
}
