import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { keepAwake } from '../../link/pad/keep-awake.ts';
import { guardLeaving, type RiskSources, riskOfLeaving } from '../../link/pad/leaving.ts';
import type { Duty, PadLink } from '../../link/pad/pad-link.ts';
import { Button } from '../controls/button.tsx';
import { useWords } from '../words/words.tsx';
import styles from './pad.module.css';

/** What the desk wants of this pad, how the line is, and what leaving the page would risk. */
export function PadHome({ link }: { link: PadLink }) {
  const duty = useSyncExternalStore(link.duty.subscribe, link.duty.get);
  return (
    <main className={styles.page}>
      <DutyPart duty={duty} />
      <LinePart link={link} />
      <AwakePart />
    </main>
  );
}

function DutyPart({ duty }: { duty: Duty }) {
  const words = useWords().pad;
  if (duty.kind !== 'placed') {
    return (
      <>
        <h1>{words.waiting}</h1>
        <p role="status">{duty.kind === 'waiting' ? duty.words : words.connecting}</p>
      </>
    );
  }
  const { self, lane } = duty;
  return (
    <>
      <h1>
        <bdi>{self.role === 'board' ? words.roles.board : (self.lane?.name ?? words.noLane)}</bdi>
      </h1>
      <p>
        {words.roles[self.role]} · <bdi>{self.name}</bdi> · <bdi>{self.night.name}</bdi>
      </p>
      {lane === null ? (
        <p role="status">{self.role === 'board' ? null : words.between}</p>
      ) : (
        <>
          <h2>{words.heat(lane.heat)}</h2>
          <dl className={styles.facts}>
            <dt>{words.station}</dt>
            <dd>{lane.sheet.station}</dd>
            <dt>{words.athlete}</dt>
            <dd>
              <bdi>{lane.athlete}</bdi>
            </dd>
            <dt>{words.judge}</dt>
            <dd>
              <bdi>{lane.judge}</bdi>
            </dd>
          </dl>
        </>
      )}
    </>
  );
}

function LinePart({ link }: { link: PadLink }) {
  const words = useWords().pad;
  const { outbox, clock } = link;
  const state = useSyncExternalStore(link.state.subscribe, link.state.get);
  const trouble = useSyncExternalStore(link.trouble.subscribe, link.trouble.get);
  const unsent = useSyncExternalStore(outbox.total.subscribe, outbox.total.get);
  const storage = useSyncExternalStore(outbox.storage.subscribe, outbox.storage.get);
  const reading = useSyncExternalStore(clock.reading.subscribe, clock.reading.get);
  const sources = useMemo(() => riskSources(link), [link]);
  useEffect(() => guardLeaving(sources), [sources]);
  const risk = riskOfLeaving({
    ...sources,
    connected: () => state === 'connected',
    unsent: () => unsent,
    storage: () => storage,
  });
  const line = state === 'connected' ? words.connected : (trouble ?? words.connecting);
  return (
    <>
      <p role="status">
        {line} {unsent === 0 ? words.allSent : `${words.unsent(unsent)}.`}
      </p>
      {risk === 'none' ? null : (
        <p role="alert" className={styles.risk}>
          {words.risks[risk]}
        </p>
      )}
      {reading === null ? null : <p>{words.clock(Math.ceil(reading.uncertainty))}</p>}
    </>
  );
}

function riskSources({ state, outbox, duty }: PadLink): RiskSources {
  return {
    connected: () => state.get() === 'connected',
    unsent: outbox.total.get,
    storage: outbox.storage.get,
    judging: () => {
      const now = duty.get();
      return now.kind === 'placed' && now.lane !== null && now.lane.heatPhase !== 'closed';
    },
  };
}

function AwakePart() {
  const words = useWords().pad;
  const [awake] = useState(() => keepAwake());
  const state = useSyncExternalStore(awake.state.subscribe, awake.state.get);
  useEffect(() => () => awake.end(), [awake]);
  return (
    <>
      <p role="status">{words.awakeStates[state]}</p>
      {state === 'off' ? (
        <Button large onClick={() => void awake.begin()}>
          {words.awake}
        </Button>
      ) : null}
    </>
  );
}
