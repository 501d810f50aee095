import { useEffect, useState } from 'react';

/** Whether a time stamp of the page's clock is past; false where there is none. */
export function useReached(timeStamp: number | null): boolean {
  const [reached, setReached] = useState<number | null>(null);
  useEffect(() => {
    if (timeStamp === null) return;
    const timer = setTimeout(() => setReached(timeStamp), Math.max(0, timeStamp - performance.now()));
    return () => clearTimeout(timer);
  }, [timeStamp]);
  return timeStamp !== null && reached === timeStamp;
}
