import { useState } from 'react';
import { Redirect, useLocation } from 'wouter';
import { z } from 'zod';
import { setSetup } from '../../../../shared-types/log/setup.ts';
import { person } from '../../../../shared-types/people.ts';
import { standardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { beginClock } from '../set-clocks.ts';
import { BeforeGo } from './before-go.tsx';

/** What the address of the card carries in the browser's history, so that a reload still knows it. */
const carried = z.object({ setup: setSetup, sheet: standardSheet, athlete: person, judge: person });

/** The card of a set that is not made yet: it is made at go, so that a change of mind leaves nothing behind. */
export function BriefRoute() {
  const { outbox } = useLink();
  const [, go] = useLocation();
  const [start] = useState(() => carried.safeParse(history.state));
  if (!start.success) return <Redirect to="/" replace />;
  const { id } = start.data.setup;
  return (
    <BeforeGo
      start={start.data}
      onBack={() => go('/')}
      onGo={(timeStamp) => {
        const { wallClock } = beginClock(id, timeStamp);
        outbox.begin(start.data);
        outbox.put({ kind: 'go', set: id, at: 0, wallClock });
        go(`/set/${id}`, { replace: true });
      }}
    />
  );
}
