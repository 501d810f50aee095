import { createContext, type ReactNode, useContext, useEffect, useState } from 'react';

interface Floor {
  /** Whether a floor screen stands: no navigation, glare-proof look, large targets. */
  readonly floor: boolean;
  readonly setFloor: (floor: boolean) => void;
}

const FloorContext = createContext<Floor>({ floor: false, setFloor: () => {} });

export function FloorProvider({ children }: { children: ReactNode }) {
  const [floor, setFloor] = useState(false);
  return <FloorContext value={{ floor, setFloor }}>{children}</FloorContext>;
}

export function useIsFloor(): boolean {
  return useContext(FloorContext).floor;
}

/** A screen that calls this takes the whole window and the hall look while it stands (`wanted` true). */
export function useFloor(wanted = true): void {
  const { setFloor } = useContext(FloorContext);
  useEffect(() => {
    if (!wanted) return;
    setFloor(true);
    return () => setFloor(false);
  }, [wanted, setFloor]);
}
