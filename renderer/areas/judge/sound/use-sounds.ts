import { useEffect, useState } from 'react';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { useFormats } from '../../../parts/words/words.tsx';
import { createPlayer } from './player.ts';
import type { SoundName } from './sounds.ts';
import { speak } from './speech.ts';

export interface Sounds {
  play(name: SoundName): void;
  /** Says it where spoken counts are asked for. */
  say(text: string): void;
  unlock(): void;
}

/** The settings as the latest press must find them, and one player for the whole page. */
const wanted = { sounds: true, spokenCounts: false };
const player = createPlayer(() => wanted.sounds);

export function useSounds(): Sounds {
  const { settings } = useSettings();
  const { locale } = useFormats();
  const { sounds, spokenCounts } = settings;
  useEffect(() => {
    wanted.sounds = sounds;
    wanted.spokenCounts = spokenCounts;
  }, [sounds, spokenCounts]);
  const [made] = useState<Sounds>(() => ({
    play: player.play,
    unlock: player.unlock,
    say: (text) => {
      if (wanted.spokenCounts) speak(text, locale);
    },
  }));
  return made;
}
