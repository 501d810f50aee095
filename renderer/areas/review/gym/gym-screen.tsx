import type { Subjects } from '../../../../shared-types/contract/review/filter.ts';
import type { GymView } from '../../../../shared-types/contract/review/judges.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { placeWith } from '../address/places.ts';
import { datesOf, dayOf } from '../address/span.ts';
import { type Chosen, useChoice } from '../address/use-choice.ts';
import { NoSets } from '../athlete/athlete-screen.tsx';
import { HurryFigure } from '../figures/hurry-figure.tsx';
import { PlaceFigure } from '../figures/place-figure.tsx';
import { ReasonsFigure } from '../figures/reasons-figure.tsx';
import { SpanRateFigure } from '../figures/span-rate-figure.tsx';
import { FilterBar } from '../filters/filter-bar.tsx';
import { useAbout } from '../filters/use-about.ts';
import { Actions } from '../view/actions.tsx';
import { AnswerCard } from '../view/answer-card.tsx';
import { Totals } from '../view/totals.tsx';
import { TrainCard } from '../view/train-card.tsx';
import { useReview } from '../view/use-review.ts';
import { useSubjects } from '../view/use-subjects.ts';
import styles from '../view/view.module.css';
import { View } from '../view/view.tsx';
import { GroupTable } from './group-table.tsx';

/** Everyone together: which standard the gym must teach, and the people and stations behind it. */
export function GymScreen() {
  const words = useWords().review;
  const subjects = useSubjects();
  if (subjects.data === undefined || subjects.data.athletes.length === 0) {
    return (
      <View title={words.home.gym}>
        <Loaded reading={subjects}>{() => <NoSets />}</Loaded>
      </View>
    );
  }
  return <Gym subjects={subjects.data} />;
}

function Gym({ subjects }: { subjects: Subjects }) {
  const words = useWords().review;
  const chosen = useChoice();
  const about = useAbout();
  const { choice, filter } = chosen;
  const view = useReview(`gym ${JSON.stringify(filter)}`, (client, signal) =>
    client.review.gym({ filter }, { signal }),
  );
  const stations = subjects.stations.filter((item) => choice.sheet === '' || item.sheet === choice.sheet);
  const judges = subjects.judges.map((item) => item.person);
  const station = choice.sheet === '' ? '' : (stations[0]?.station ?? choice.sheet);
  return (
    <View
      title={station === '' ? words.home.gym : words.view.subject(words.home.gym, station)}
      about={
        view.data === undefined
          ? ''
          : about(choice, view.data.totals, judges.find((judge) => judge.id === choice.judge)?.name)
      }
      stale={view.reading && view.data !== undefined}
      filters={
        <FilterBar
          chosen={chosen}
          sheet={choice.sheet}
          offered={{
            stations: subjects.stations,
            allStations: true,
            loadsKg: [...new Set(stations.flatMap((item) => item.loadsKg))],
            before: ['fresh', 'run', 'station'],
            tags: [...new Set(stations.flatMap((item) => item.tags.map((tag) => tag.tag)))],
            judges,
          }}
        />
      }
      actions={<Actions of={[{ view: 'gym', filter }]} />}
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
            <Findings data={data} chosen={chosen} subjects={subjects} />
          )
        }
      </Loaded>
    </View>
  );
}

function Findings({ data, chosen, subjects }: { data: GymView; chosen: Chosen; subjects: Subjects }) {
  const words = useWords().review;
  const { choice, change } = chosen;
  const { totals, cost, trend, reasons, train, points, span } = data;
  const stationName = (sheet: string): string =>
    subjects.stations.find((item) => item.sheet === sheet)?.station ?? sheet;
  const repsName =
    choice.sheet === ''
      ? words.judge.gym.reps
      : (subjects.stations.find((item) => item.sheet === choice.sheet)?.repsName ?? words.judge.gym.reps);
  return (
    <>
      <AnswerCard totals={totals} trend={trend} cost={cost} repsName={repsName} />
      <TrainCard
        train={train}
        noReps={totals.noReps}
        unexplained={totals.unexplained}
        repsName={repsName}
        station={stationName(train?.sheet ?? '')}
      />
      <Totals totals={totals} cost={cost} repsName={repsName} />
      <div className={styles.grid}>
        <SpanRateFigure
          points={points}
          span={span}
          trend={trend}
          onPick={(point) => change({ span: datesOf(dayOf(point.from), dayOf(point.to - 1)) })}
        />
        <ReasonsFigure
          reasons={reasons}
          repsName={repsName}
          dayOf={() => undefined}
          {...(choice.sheet === '' ? { stationOf: stationName } : {})}
        />
        <PlaceFigure place={data.place} />
        <HurryFigure hurry={data.hurry} />
        <div className={styles.half}>
          <GroupTable
            title={words.judge.gym.athletes}
            lines={data.athletes}
            to={(id) => placeWith(`/athlete/${id}`, choice)}
          />
        </div>
        <div className={`${styles.half} ${styles.column}`}>
          <GroupTable
            title={words.judge.gym.judges}
            lines={data.judges}
            to={(id) => placeWith(`/judge/${id}`, { ...choice, judge: '' })}
          />
          {choice.sheet === '' ? (
            <GroupTable
              title={words.judge.gym.stations}
              lines={data.stations}
              to={(id) => placeWith('/gym', { ...choice, sheet: id })}
            />
          ) : null}
        </div>
      </div>
    </>
  );
}
