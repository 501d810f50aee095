import { type ReactNode, useState } from 'react';
import { Link } from 'wouter';
import type { Subject, Subjects } from '../../../../shared-types/contract/review/filter.ts';
import { TextField } from '../../../parts/controls/field.tsx';
import { findOptions } from '../../../parts/controls/find-options.ts';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { NoSets } from '../athlete/athlete-screen.tsx';
import { useSubjects } from '../view/use-subjects.ts';
import styles from './home-screen.module.css';
import { linesOf, type SubjectLine } from './subject-lines.ts';

/** Whose sets to look at: an athlete, a judge, everyone. */
export function HomeScreen() {
  const words = useWords().review;
  const subjects = useSubjects();
  return (
    <Page title={words.title} intro={words.home.intro} help={words.home.help}>
      <Loaded reading={subjects}>{(data) => (data.athletes.length === 0 ? <NoSets /> : <People data={data} />)}</Loaded>
    </Page>
  );
}

/** More people than this are found by typing. */
const mostShown = 40;

function People({ data }: { data: Subjects }) {
  const words = useWords().review.home;
  const common = useWords().common;
  const [text, setText] = useState('');
  const found = (subjects: readonly Subject[]): readonly SubjectLine[] => {
    const wanted = findOptions(
      subjects.map(({ person }) => ({ id: person.id, label: person.name })),
      text,
    );
    const ids = new Set(wanted.map((option) => option.id));
    return linesOf(subjects.filter(({ person }) => ids.has(person.id)));
  };
  const [athletes, judges] = [found(data.athletes), found(data.judges)];
  const everyone = linesOf([{ person: { id: '', name: '' }, stations: data.stations }])[0];
  return (
    <>
      <search className={styles.search}>
        <TextField label={words.search} type="search" maxLength={200} value={text} onChange={setText} />
      </search>
      <div className={styles.lists}>
        <section className={styles.people} aria-labelledby="review-athletes">
          <h2 id="review-athletes">{words.athletes}</h2>
          <Lines lines={athletes} to={(line) => `/athlete/${line.id}?station=${encodeURIComponent(line.station)}`} />
        </section>
        <div className={styles.aside}>
          {everyone === undefined ? null : (
            <section aria-labelledby="review-gym">
              <h2 id="review-gym">{words.gymHead}</h2>
              <ul className={styles.lines}>
                <li>
                  <SubjectLink href="/gym" name={words.gym} line={everyone} />
                </li>
              </ul>
            </section>
          )}
          <section className={styles.people} aria-labelledby="review-judges">
            <h2 id="review-judges">{words.judges}</h2>
            <Lines lines={judges} to={(line) => `/judge/${line.id}`} />
          </section>
        </div>
      </div>
      <p className="visually-hidden" role="status">
        {text.trim() === '' ? '' : common.matches(athletes.length + judges.length)}
      </p>
    </>
  );
}

function Lines({ lines, to }: { lines: readonly SubjectLine[]; to: (line: SubjectLine) => string }) {
  const words = useWords().review.home;
  if (lines.length === 0) return <p className={styles.soft}>{words.noMatch}</p>;
  return (
    <>
      <ul className={styles.lines}>
        {lines.slice(0, mostShown).map((line) => (
          <li key={line.id}>
            <SubjectLink href={to(line)} name={line.name} line={line} />
          </li>
        ))}
      </ul>
      {lines.length > mostShown ? <p className={styles.soft}>{words.moreByTyping(lines.length - mostShown)}</p> : null}
    </>
  );
}

function SubjectLink({ href, name, line }: { href: string; name: string; line: SubjectLine }): ReactNode {
  const words = useWords().review.home;
  const { date } = useFormats();
  return (
    <Link href={href} className={styles.line}>
      <bdi className={styles.name}>{name}</bdi>
      <span className={styles.rate}>{line.attempts === 0 ? '–' : words.rate(line.noReps / line.attempts)}</span>
      <span className={styles.soft}>
        {words.sets(line.sets)} · {words.last(date(line.lastAt))}
      </span>
    </Link>
  );
}
