import { useState } from 'react';
import type { NightEventOf } from '../../../../shared-types/night/events.ts';
import type { Presence } from '../../../../shared-types/night/state.ts';
import { Select } from '../../../parts/controls/field.tsx';
import { useAnnounce } from '../../../parts/shell/announcer.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import type { Shown } from './night-screen.tsx';
import styles from './plan.module.css';

type State = NightEventOf<'presence'>['state'];
const states: readonly State[] = ['expected', 'arrived', 'no-show', 'left'];

interface PresenceProps {
  readonly shown: Shown;
  readonly presence: ReadonlyMap<string, Presence>;
}

/** Who came, who did not, who left. */
export function PresenceList({ shown, presence }: PresenceProps) {
  const words = useWords().night.plan;
  const { compare } = useFormats();
  const announce = useAnnounce();
  const [open, setOpen] = useState(false);
  const { roster, nameOf, write } = shown;
  const people = roster.arrangement.people
    .map(({ id }) => ({ id, name: nameOf(id) }))
    .toSorted((one, other) => compare(one.name, other.name));
  const note = async (person: string, name: string, state: State): Promise<void> => {
    if (await write({ kind: 'presence', person, state })) announce(words.noted(name, words.states[state]));
  };
  return (
    <details
      className={`${styles.presence ?? ''} no-print`}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{words.peopleTitle}</summary>
      <p className={styles.soft}>{words.peopleHint}</p>
      <ul className={styles.people}>
        {people.map(({ id, name }) => (
          <li key={id}>
            <Select<State>
              label={words.state(name)}
              value={presence.get(id)?.state ?? 'expected'}
              options={states.map((value) => ({ value, label: words.states[value] }))}
              onChange={(state) => void note(id, name, state)}
            />
          </li>
        ))}
      </ul>
    </details>
  );
}
