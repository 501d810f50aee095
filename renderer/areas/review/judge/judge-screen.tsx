import { useState } from 'react';
import { Link } from 'wouter';
import type { Subject, Subjects } from '../../../../shared-types/contract/review/filter.ts';
import type { JudgeView } from '../../../../shared-types/contract/review/judges.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Card, EmptyState } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { Table } from '../../../parts/controls/table.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { placeWith } from '../address/places.ts';
import { type Chosen, useChoice } from '../address/use-choice.ts';
import { NoSets } from '../athlete/athlete-screen.tsx';
import { RateFigure } from '../figures/rate-figure.tsx';
import { FilterBar } from '../filters/filter-bar.tsx';
import { useAbout } from '../filters/use-about.ts';
import { Actions } from '../view/actions.tsx';
import { useReview } from '../view/use-review.ts';
import { useSubjects } from '../view/use-subjects.ts';
import styles from '../view/view.module.css';
import { View } from '../view/view.tsx';
import { BesideFigure, BesideWords } from './beside-figure.tsx';
import { DriftFigure } from './drift-figure.tsx';
import { JudgeTotals } from './judge-totals.tsx';

/** One judge beside the others on the same athletes. */
export function JudgeScreen({ id }: { id: string }) {
  const words = useWords().review;
  const subjects = useSubjects();
  const found = subjects.data?.judges.find((subject) => subject.person.id === id);
  if (subjects.data === undefined || found === undefined) {
    return (
      <View title={words.title}>
        <Loaded reading={subjects}>{() => <NoSets />}</Loaded>
      </View>
    );
  }
  return <Judge subject={found} subjects={subjects.data} />;
}

function Judge({ subject, subjects }: { subject: Subject; subjects: Subjects }) {
  const words = useWords().review;
  const chosen = useChoice();
  const about = useAbout();
  // A judge is the view's own subject here: the address narrows by everything else.
  const { judge: _none, ...narrowed } = chosen.filter;
  const filter = { ...narrowed, judge: subject.person.id };
  const view = useReview(`judge ${JSON.stringify(filter)}`, (client, signal) =>
    client.review.judge({ filter }, { signal }),
  );
  const { choice } = chosen;
  const stations = subject.stations.filter((item) => choice.sheet === '' || item.sheet === choice.sheet);
  const stationName = (sheet: string): string =>
    subjects.stations.find((item) => item.sheet === sheet)?.station ?? sheet;
  return (
    <View
      title={words.judge.title(subject.person.name)}
      about={view.data === undefined ? '' : about(choice, view.data.totals, undefined)}
      stale={view.reading && view.data !== undefined}
      filters={
        <FilterBar
          chosen={chosen}
          sheet={choice.sheet}
          offered={{
            stations: subject.stations.map(({ sheet }) => ({ sheet, station: stationName(sheet) })),
            allStations: true,
            loadsKg: [...new Set(stations.flatMap((item) => item.loadsKg))],
            before: ['fresh', 'run', 'station'],
            tags: [...new Set(stations.flatMap((item) => item.tags.map((tag) => tag.tag)))],
            judges: [],
          }}
        />
      }
      actions={<Actions of={[{ view: 'judge', filter }]} />}
    >
      <Loaded reading={view}>
        {(data) =>
          data.totals.sets === 0 ? (
            <EmptyState
              title={words.filters.nothing}
              text={words.filters.nothingText}
              action={<Button onClick={chosen.reset}>{words.filters.reset}</Button>}
            />
          ) : (
            <Findings data={data} chosen={chosen} stationName={stationName} />
          )
        }
      </Loaded>
    </View>
  );
}

interface FindingsProps {
  readonly data: JudgeView;
  readonly chosen: Chosen;
  readonly stationName: (sheet: string) => string;
}

function Findings({ data, chosen, stationName }: FindingsProps) {
  const words = useWords().review;
  const { overall, totals, points } = data;
  return (
    <>
      <section data-testid="answer">
        <p className={styles.sentence}>
          <BesideWords beside={overall} />
        </p>
        <p className={styles.beside}>
          {overall.own.rate === null || overall.others.rate === null
            ? null
            : words.judge.own(overall.own.rate, overall.others.rate)}{' '}
          {words.judge.noProof}
        </p>
      </section>
      <JudgeTotals data={data} />
      <div className={styles.grid}>
        <BesideFigure
          overall={overall}
          reasons={data.reasons}
          stationOf={chosen.choice.sheet === '' ? stationName : undefined}
        />
        <div className={`${styles.pair} ${styles.column}`}>
          <DriftFigure drift={data.drift} />
          <Athletes data={data} chosen={chosen} />
        </div>
        <RateFigure points={points} trend={null} sets={totals.sets} size="full" />
      </div>
    </>
  );
}

const shownFirst = 12;

function Athletes({ data, chosen }: { data: JudgeView; chosen: Chosen }) {
  const words = useWords().review;
  const { number, percent } = useFormats();
  const texts = words.judge.gym;
  const [all, setAll] = useState(false);
  const { athletes } = data;
  return (
    <Card title={words.judge.athletes}>
      <Table
        caption={words.judge.gym.tableOf(words.judge.athletes)}
        columns={[
          {
            key: 'name',
            head: texts.columns.name,
            cell: (line) => (
              <Link href={placeWith(`/athlete/${line.id}`, { ...chosen.choice, judge: data.judge.id })}>
                <bdi>{line.name}</bdi>
              </Link>
            ),
          },
          { key: 'sets', head: texts.columns.sets, figures: true, cell: (line) => number(line.sets) },
          { key: 'attempts', head: texts.columns.attempts, figures: true, cell: (line) => number(line.attempts) },
          {
            key: 'rate',
            head: texts.columns.rate,
            figures: true,
            cell: (line) => (line.attempts === 0 ? words.figures.dash : percent(line.noReps / line.attempts, 1)),
          },
        ]}
        rows={all ? athletes : athletes.slice(0, shownFirst)}
        rowKey={(line) => line.id}
      />
      {athletes.length > shownFirst ? (
        <div className="no-print">
          <Button weight="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? words.figures.reasons.fewer : words.figures.reasons.more(athletes.length - shownFirst)}
          </Button>
        </div>
      ) : null}
    </Card>
  );
}
