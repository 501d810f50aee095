import { createContext, type ReactNode, useCallback, useContext, useState } from 'react';
import { defaultSettings, type Settings } from '../../../shared-types/contract/settings.ts';
import { useNotices } from '../shell/notices.tsx';
import { failureOf } from './failure.ts';
import { useLink } from './link.ts';
import { useCall } from './use-call.ts';

interface SettingsHeld {
  /** The user's settings; the defaults until `ready`. */
  readonly settings: Settings;
  /** Whether the desk has answered. */
  readonly ready: boolean;
  /** Shows the change at once and keeps it at the desk; false where the desk refused, which is told and taken back. */
  put(change: Partial<Settings>): Promise<boolean>;
}

const SettingsContext = createContext<SettingsHeld>({
  settings: defaultSettings,
  ready: false,
  put: async () => false,
});

export function SettingsProvider({ children }: { children: ReactNode }) {
  const link = useLink();
  const { tellFailure } = useNotices();
  const stored = useCall('settings', (client, signal) => client.settings.get(undefined, { signal }), {
    topics: ['settings'],
  });
  const [ahead, setAhead] = useState<Partial<Settings>>({});
  const put = useCallback(
    async (change: Partial<Settings>): Promise<boolean> => {
      setAhead((before) => ({ ...before, ...change }));
      try {
        await link.client.settings.put(change);
        return true;
      } catch (error) {
        tellFailure(failureOf(error));
        setAhead((before) => without(before, change));
        return false;
      }
    },
    [link, tellFailure],
  );
  const settings = { ...(stored.data ?? defaultSettings), ...ahead };
  return <SettingsContext value={{ settings, ready: stored.data !== undefined, put }}>{children}</SettingsContext>;
}

/** Takes back what was refused, unless a later change has replaced it. */
function without(ahead: Partial<Settings>, refused: Partial<Settings>): Partial<Settings> {
  return Object.fromEntries(
    Object.entries(ahead).filter(([name, value]) => value !== refused[name as keyof Settings]),
  ) as Partial<Settings>;
}

export function useSettings(): SettingsHeld {
  return useContext(SettingsContext);
}
