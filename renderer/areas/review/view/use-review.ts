import { useEffect, useRef } from 'react';
import type { DeskClient } from '../../../link/connection.ts';
import { useChanges } from '../../../parts/desk/changes.tsx';
import { type Reading, useCall } from '../../../parts/desk/use-call.ts';

/** While sets are being judged every call is a change: a review of ended sets follows at this pace, not at theirs. */
const followMs = 10_000;

/** An answer of the Review area: kept while it is narrowed, read again some time after sets, people or sheets changed. */
export function useReview<T>(key: string, call: (client: DeskClient, signal: AbortSignal) => Promise<T>): Reading<T> {
  const reading = useCall(`review ${key}`, call, { keep: true });
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const { again } = reading;
  useChanges(['sets', 'people', 'standards'], () => {
    timer.current ??= setTimeout(() => {
      timer.current = null;
      again();
    }, followMs);
  });
  useEffect(
    () => () => {
      if (timer.current !== null) clearTimeout(timer.current);
    },
    [],
  );
  return reading;
}
