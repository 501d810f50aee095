import { useEffect, useState } from 'react';
import type { SetLog, SetView } from '../../link/set-log.ts';
import { useLink } from '../../parts/desk/link.ts';
import { useFramed } from './use-framed.ts';

const opening: SetView = { status: 'opening', start: null, events: [], live: false };

/** The log of a set while its screen stands: `log` to act on, `view` as painted. */
export function useSetLog(id: string): { readonly log: SetLog | null; readonly view: SetView } {
  const link = useLink();
  const [log, setLog] = useState<SetLog | null>(null);
  useEffect(() => {
    const opened = link.openSet(id);
    setLog(opened);
    return () => {
      opened.close();
      setLog(null);
    };
  }, [id, link]);
  return { log, view: useFramed(log, opening) };
}
