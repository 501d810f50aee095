import { useState } from 'react';
import { Link } from 'wouter';
import type { PersonLine } from '../../../shared-types/contract/people.ts';
import { LinkButton } from '../../parts/controls/button.tsx';
import { EmptyState } from '../../parts/controls/card.tsx';
import { Check, TextField } from '../../parts/controls/field.tsx';
import { Loaded } from '../../parts/controls/loaded.tsx';
import { useCall } from '../../parts/desk/use-call.ts';
import { classNames } from '../../parts/look/class-names.ts';
import { Page } from '../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../parts/words/words.tsx';
import { findPeople } from './find-people.ts';
import styles from './people.module.css';

export function PeopleList() {
  const words = useWords().people;
  const [text, setText] = useState('');
  const [archived, setArchived] = useState(false);
  const people = useCall(`people ${archived}`, (client, signal) => client.people.list({ archived }, { signal }), {
    topics: ['people', 'sets'],
    keep: true,
  });
  const add = (
    <LinkButton href="/new" weight="main">
      {words.add}
    </LinkButton>
  );
  return (
    <Page title={words.title} help={words.help} actions={people.data?.length === 0 ? null : add}>
      <Loaded reading={people}>
        {(lines) => (
          <>
            {lines.length === 0 && !archived ? (
              <EmptyState title={words.emptyTitle} text={words.emptyText} action={add} />
            ) : (
              <Found lines={lines} text={text} onText={setText} />
            )}
            <Check label={words.showArchived} checked={archived} onChange={setArchived} />
          </>
        )}
      </Loaded>
    </Page>
  );
}

interface FoundProps {
  readonly lines: readonly PersonLine[];
  readonly text: string;
  readonly onText: (text: string) => void;
}

function Found({ lines, text, onText }: FoundProps) {
  const words = useWords().people;
  const { compare } = useFormats();
  const found = findPeople(lines, text, compare);
  return (
    <div className={styles.found}>
      <TextField className={styles.search} label={words.find} type="search" value={text} onChange={onText} />
      <p className="visually-hidden" role="status">
        {text === '' ? '' : words.found(found.length)}
      </p>
      {found.length === 0 && text !== '' ? <p className={styles.noMatch}>{words.noMatch(text.slice(0, 60))}</p> : null}
      <ul className={styles.list}>
        {found.map((line) => (
          <li key={line.person.id}>
            <PersonRow line={line} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function PersonRow({ line }: { line: PersonLine }) {
  const words = useWords().people;
  const { person, setsAsAthlete, setsAsJudge } = line;
  const role = person.athlete ? (person.judge ? 'both' : 'athlete') : 'judge';
  const tallies = [
    setsAsAthlete === 0 ? '' : words.asAthlete(setsAsAthlete),
    setsAsJudge === 0 ? '' : words.asJudge(setsAsJudge),
  ].filter((part) => part !== '');
  return (
    <Link href={`/${person.id}`} className={classNames(styles.row, person.archivedAt !== null && styles.archived)}>
      <span className={styles.name}>
        <bdi>{person.name}</bdi>
        {person.nickname === '' ? null : <bdi className={styles.nickname}>{person.nickname}</bdi>}
      </span>
      <span className={styles.role}>
        {words.roles[role]}
        {person.archivedAt === null ? '' : `, ${words.archived}`}
      </span>
      <span className={styles.tally}>
        {tallies.length === 0 ? words.noSet : tallies.map((tally) => <span key={tally}>{tally}</span>)}
      </span>
    </Link>
  );
}
