import { useState } from 'react';
import type { Subject, Subjects } from '../../../../shared-types/contract/review/filter.ts';
import type { AthleteView } from '../../../../shared-types/contract/review.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { placeWith } from '../address/places.ts';
import { type Chosen, useChoice } from '../address/use-choice.ts';
import { HurryFigure } from '../figures/hurry-figure.tsx';
import { LedgersFigure } from '../figures/ledgers-figure.tsx';
import { PacingFigure } from '../figures/pacing-figure.tsx';
import { PictureFigure } from '../figures/picture-figure.tsx';
import { PlaceFigure } from '../figures/place-figure.tsx';
import { RateFigure } from '../figures/rate-figure.tsx';
import { ReasonsFigure } from '../figures/reasons-figure.tsx';
import { FilterBar } from '../filters/filter-bar.tsx';
import { useAbout } from '../filters/use-about.ts';
import { ForecastFigure } from '../plans/forecast-figure.tsx';
import { Actions } from '../view/actions.tsx';
import { AnswerCard } from '../view/answer-card.tsx';
import { Totals } from '../view/totals.tsx';
import { TrainCard } from '../view/train-card.tsx';
import { useReview } from '../view/use-review.ts';
import { useSheets } from '../view/use-sheets.ts';
import { useSubjects } from '../view/use-subjects.ts';
import styles from '../view/view.module.css';
import { View } from '../view/view.tsx';

/** One athlete at one station: the answer, what to train, the evidence. */
export function AthleteScreen({ id }: { id: string }) {
  const words = useWords().review;
  const subjects = useSubjects();
  const found = subjects.data?.athletes.find((subject) => subject.person.id === id);
  if (subjects.data === undefined || found === undefined) {
    return (
      <View title={words.title}>
        <Loaded reading={subjects}>{() => <NoSets />}</Loaded>
      </View>
    );
  }
  return <Athlete subject={found} subjects={subjects.data} />;
}

export function NoSets() {
  const words = useWords().review.home;
  return (
    <EmptyState
      title={words.empty}
      text={words.emptyText}
      action={
        <LinkButton href="~/judge" weight="main">
          {words.toJudge}
        </LinkButton>
      }
    />
  );
}

const firstRows = 20;
const mostRows = 200;

function Athlete({ subject, subjects }: { subject: Subject; subjects: Subjects }) {
  const words = useWords().review;
  const chosen = useChoice();
  const about = useAbout();
  const [rows, setRows] = useState(firstRows);
  const station = stationOf(subject, chosen);
  const sheet = station?.sheet ?? '';
  const choice = { ...chosen.choice, sheet };
  const filter = { ...chosen.filter, athlete: subject.person.id, sheet };
  const view = useReview(`athlete ${rows} ${JSON.stringify(filter)}`, (client, signal) =>
    client.review.athlete({ filter, rows }, { signal }),
  );
  const name = subjects.stations.find((item) => item.sheet === sheet)?.station ?? sheet;
  const judge = subjects.judges.find((item) => item.person.id === choice.judge)?.person.name;
  const path = `/athlete/${subject.person.id}`;
  return (
    <View
      title={words.view.subject(subject.person.name, name)}
      about={view.data === undefined ? '' : about(choice, view.data.totals, judge)}
      stale={view.reading && view.data !== undefined}
      filters={
        <FilterBar
          chosen={chosen}
          sheet={sheet}
          offered={{
            stations: subject.stations.map((item) => ({
              sheet: item.sheet,
              station: subjects.stations.find((known) => known.sheet === item.sheet)?.station ?? item.sheet,
            })),
            allStations: false,
            loadsKg: station?.loadsKg ?? [],
            before: station?.before ?? [],
            tags: station?.tags.map((item) => item.tag) ?? [],
            judges: subjects.judges.map((item) => item.person),
          }}
        />
      }
      actions={<Actions of={[{ view: 'athlete', filter, rows }]} />}
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
            <Findings
              data={data}
              chosen={chosen}
              onMore={
                rows < mostRows && data.picture.length < data.totals.sets ? () => setRows(nextRows(rows)) : undefined
              }
              compare={placeWith(`${path}/compare`, choice)}
              card={placeWith(`${path}/race-card`, choice, { goal: chosen.params.get('goal') ?? '' })}
            />
          )
        }
      </Loaded>
    </View>
  );
}

function nextRows(rows: number): number {
  return Math.min(mostRows, rows * 3);
}

/** The station that the address names, or else the one with the latest set. */
export function stationOf(subject: Subject, chosen: Pick<Chosen, 'choice'>): Subject['stations'][number] | undefined {
  return subject.stations.find((item) => item.sheet === chosen.choice.sheet) ?? subject.stations[0];
}

interface FindingsProps {
  readonly data: AthleteView;
  readonly chosen: Chosen;
  readonly onMore: (() => void) | undefined;
  readonly compare: string;
  readonly card: string;
}

function Findings({ data, chosen, onMore, compare, card }: FindingsProps) {
  const words = useWords().review;
  const sheets = useSheets();
  const { totals, cost, trend, reasons, place, hurry, pacing, train, points, station } = data;
  const { repsName } = station;
  const days = new Map(points.map((point) => [point.id, point.at]));
  return (
    <>
      <AnswerCard totals={totals} trend={trend} cost={cost} repsName={repsName} />
      <TrainCard train={train} noReps={totals.noReps} unexplained={totals.unexplained} repsName={repsName} />
      <Totals totals={totals} cost={cost} repsName={repsName} />
      <p className={`${styles.links} no-print`}>
        <LinkButton href={card}>{words.view.raceCard}</LinkButton>
        <LinkButton href={compare}>{words.plans.compare.link}</LinkButton>
      </p>
      <div className={styles.grid}>
        <RateFigure points={points} trend={trend} sets={totals.sets} size="wide" />
        <ReasonsFigure
          reasons={reasons}
          repsName={repsName}
          dayOf={(id) => {
            const at = days.get(id);
            return at === undefined ? undefined : words.figures.date(at);
          }}
        />
        <PictureFigure rows={data.picture} sheet={sheets.get(station.sheet)} onMore={onMore} />
        <LedgersFigure points={points} />
        <PlaceFigure place={place} />
        <HurryFigure hurry={hurry} />
        <PacingFigure pacing={pacing} />
        <ForecastFigure
          filter={{ ...chosen.filter, athlete: data.athlete.id, sheet: station.sheet }}
          chosen={chosen}
          sheet={sheets.get(station.sheet)}
          repsName={repsName}
        />
      </div>
    </>
  );
}
