import { useState } from 'react';
import type { SetStart } from '../../../link/store.ts';
import { useSettings } from '../../../parts/desk/settings.tsx';
import { useSounds } from '../sound/use-sounds.ts';
import { BriefScreen } from './brief-screen.tsx';
import { CountdownScreen } from './countdown-screen.tsx';

interface BeforeGoProps {
  readonly start: SetStart;
  /** The set begins at this time stamp of the page. */
  readonly onGo: (timeStamp: number) => void;
  readonly onBack: () => void;
}

/** From the card read aloud to the go. */
export function BeforeGo({ start, onGo, onBack }: BeforeGoProps) {
  const { settings } = useSettings();
  const sounds = useSounds();
  const [begun, setBegun] = useState<number | null>(null);
  const go = (timeStamp: number): void => {
    sounds.play('go');
    onGo(timeStamp);
  };
  if (begun !== null) {
    return (
      <CountdownScreen
        seconds={settings.countdownS}
        begun={begun}
        start={start}
        onGo={go}
        onCancel={() => setBegun(null)}
      />
    );
  }
  return (
    <BriefScreen
      start={start}
      countdownS={settings.countdownS}
      onCountdown={(timeStamp) => {
        sounds.unlock();
        if (settings.countdownS === 0) go(timeStamp);
        else setBegun(timeStamp);
      }}
      onGoNow={(timeStamp) => {
        sounds.unlock();
        go(timeStamp);
      }}
      onBack={onBack}
    />
  );
}
