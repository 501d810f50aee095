import { useState } from 'react';
import { calledName } from '../../../../shared-types/people.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Select } from '../../../parts/controls/field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { Group } from './group.tsx';
import type { PairEntry } from './night-entry.ts';
import styles from './night-form.module.css';
import type { FieldsProps } from './night-form.tsx';

const nobody: PairEntry = { judge: '', athlete: '' };

/** Who must not judge whom, among those who take part. */
export function PairFields({ entry, known, problems, change }: FieldsProps) {
  const words = useWords().night.form;
  const common = useWords().common;
  const [pair, setPair] = useState(nobody);
  const { parts, pairs } = entry;
  const names = new Map(known.people.map((person) => [person.id, calledName(person)]));
  const options = (role: 'athlete' | 'judge') => [
    { value: '', label: words.choose },
    ...known.people.filter(({ id }) => parts[id]?.[role]).map(({ id }) => ({ value: id, label: names.get(id) ?? '' })),
  ];
  const shown = pairs.filter(({ judge, athlete }) => parts[judge]?.judge && parts[athlete]?.athlete);
  const add = (): void => {
    if (pair.judge === '' || pair.athlete === '') return;
    const there = pairs.some(({ judge, athlete }) => judge === pair.judge && athlete === pair.athlete);
    if (!there) change({ pairs: [...pairs, pair] });
    setPair(nobody);
  };
  return (
    <Group title={words.pairsTitle} hint={words.pairsHint} problem={problems.pairs}>
      {shown.length === 0 ? null : (
        <ul className={styles.pairs}>
          {shown.map((item) => {
            const [judge, athlete] = [names.get(item.judge) ?? '', names.get(item.athlete) ?? ''];
            return (
              <li key={`${item.judge} ${item.athlete}`}>
                <bdi>{words.pair(judge, athlete)}</bdi>
                <Button
                  weight="quiet"
                  aria-label={words.removePair(judge, athlete)}
                  onClick={() => change({ pairs: pairs.filter((other) => other !== item) })}
                >
                  {common.remove}
                </Button>
              </li>
            );
          })}
        </ul>
      )}
      <div className={styles.pairRow}>
        <Select
          label={words.judge}
          value={pair.judge}
          options={options('judge')}
          onChange={(judge) => setPair({ ...pair, judge })}
        />
        <Select
          label={words.athlete}
          value={pair.athlete}
          options={options('athlete')}
          onChange={(athlete) => setPair({ ...pair, athlete })}
        />
        <Button onClick={add} disabled={pair.judge === '' || pair.athlete === ''}>
          {words.addPair}
        </Button>
      </div>
    </Group>
  );
}
