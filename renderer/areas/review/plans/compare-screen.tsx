import { useState } from 'react';
import type { AthleteFilter, Subject, Subjects } from '../../../../shared-types/contract/review/filter.ts';
import { Select, TextField } from '../../../parts/controls/field.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { startOfDay } from '../../../parts/controls/start-of-day.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { filterOf } from '../address/choice.ts';
import { placeWith } from '../address/places.ts';
import { useChoice } from '../address/use-choice.ts';
import { NoSets, stationOf } from '../athlete/athlete-screen.tsx';
import { Actions } from '../view/actions.tsx';
import { useReview } from '../view/use-review.ts';
import { useSubjects } from '../view/use-subjects.ts';
import { View } from '../view/view.tsx';
import { ComparisonFigures } from './comparison-figures.tsx';
import styles from './plans.module.css';
import { afterWork, daysOfSide, readSides, type Sides, sideChoice, sideValues, usualSides, waysOf } from './sides.ts';

/** Two conditions or two spans of one athlete side by side. */
export function CompareScreen({ id }: { id: string }) {
  const words = useWords().review;
  const subjects = useSubjects();
  const found = subjects.data?.athletes.find((subject) => subject.person.id === id);
  if (subjects.data === undefined || found === undefined) {
    return (
      <View title={words.view.compare}>
        <Loaded reading={subjects}>{() => <NoSets />}</Loaded>
      </View>
    );
  }
  return <Compared subject={found} subjects={subjects.data} />;
}

function Compared({ subject, subjects }: { subject: Subject; subjects: Subjects }) {
  const words = useWords().review;
  const texts = words.plans.compare;
  const chosen = useChoice();
  const [now] = useState(() => Date.now());
  const station = stationOf(subject, chosen);
  const judges = subjects.judges.map((item) => item.person);
  const known = subjects.stations.find((item) => item.sheet === station?.sheet);
  const choice = { ...chosen.choice, sheet: station?.sheet ?? '' };
  const sides = station === undefined ? null : readSides(chosen.params, station, judges);
  const sideText = useSideText(judges);
  const back = {
    href: placeWith(`/athlete/${subject.person.id}`, choice),
    text: words.view.subject(subject.person.name, known?.station ?? ''),
  };
  const title = texts.title(subject.person.name, known?.station ?? '');
  if (station === undefined || sides === null) {
    return (
      <View title={title} back={back}>
        <p>{texts.nothing}</p>
      </View>
    );
  }
  const filterFor = (side: string) => ({
    ...filterOf(sideChoice(choice, sides.way, side), now),
    athlete: subject.person.id,
    sheet: station.sheet,
  });
  const input = { a: filterFor(sides.a), b: filterFor(sides.b) };
  const put = (next: Sides): void =>
    chosen.edit((params) => {
      params.set('by', next.way);
      params.set('a', next.a);
      params.set('b', next.b);
    });
  return (
    <View
      title={title}
      back={back}
      about={`${sideText(sides.way, sides.a)} · ${sideText(sides.way, sides.b)}`}
      filters={
        <div className={styles.fields}>
          <Segmented
            label={texts.by}
            value={sides.way}
            options={waysOf(station, judges).map((way) => ({ value: way, label: texts.bys[way] }))}
            onChange={(way) => put(usualSides(way, station, judges))}
          />
          {(['a', 'b'] as const).map((side) =>
            sides.way === 'time' ? (
              <SideDays
                key={side}
                name={texts[side]}
                value={sides[side]}
                onChange={(value) => put({ ...sides, [side]: value })}
              />
            ) : (
              <Select
                key={side}
                label={texts[side]}
                value={sides[side]}
                options={sideValues(sides.way, station, judges).map((value) => ({
                  value,
                  label: sideText(sides.way, value),
                }))}
                onChange={(value) => put({ ...sides, [side]: value })}
              />
            ),
          )}
        </div>
      }
      actions={<Actions of={[{ view: 'comparison', ...input }]} />}
    >
      <Answered
        input={input}
        names={{ a: sideText(sides.way, sides.a), b: sideText(sides.way, sides.b) }}
        repsName={known?.repsName ?? ''}
      />
    </View>
  );
}

function SideDays({ name, value, onChange }: { name: string; value: string; onChange: (value: string) => void }) {
  const words = useWords().review.plans.compare;
  const { from, to } = daysOfSide(value);
  return (
    <fieldset className={styles.days}>
      <legend>{name}</legend>
      <TextField label={words.from} type="date" value={from} onChange={(day) => onChange(`${day}..${to}`)} />
      <TextField label={words.to} type="date" value={to} onChange={(day) => onChange(`${from}..${day}`)} />
    </fieldset>
  );
}

/** A side in words. */
function useSideText(judges: readonly { readonly id: string; readonly name: string }[]) {
  const words = useWords().review;
  const { date } = useFormats();
  return (way: Sides['way'], side: string): string => {
    switch (way) {
      case 'before':
        return side === afterWork
          ? words.plans.compare.tired
          : side === 'fresh' || side === 'run' || side === 'station'
            ? words.filters.beforeOf[side]
            : side;
      case 'load':
        return words.filters.loadOf(side === 'none' ? null : Number(side));
      case 'judge':
        return judges.find((judge) => judge.id === side)?.name ?? side;
      case 'tag':
        return words.plans.compare.tagged(side);
      case 'time': {
        const { from, to } = daysOfSide(side);
        const [first, last] = [startOfDay(from), startOfDay(to)];
        if (first !== null && last !== null) return words.filters.days(first, last);
        if (first !== null) return words.filters.fromDay(date(first));
        return last === null ? words.filters.all : words.filters.toDay(date(last));
      }
    }
  };
}

interface AnsweredProps {
  readonly input: { readonly a: AthleteFilter; readonly b: AthleteFilter };
  readonly names: { readonly a: string; readonly b: string };
  readonly repsName: string;
}

function Answered({ input, names, repsName }: AnsweredProps) {
  const comparison = useReview(`compare ${JSON.stringify(input)}`, (client, signal) =>
    client.review.compare(input, { signal }),
  );
  // The days of the sets, which a comparison does not tell.
  const { athlete, sheet } = input.a;
  const dated = useReview(`days ${athlete} ${sheet}`, (client, signal) =>
    client.review.athlete({ filter: { athlete, sheet }, rows: 1 }, { signal }),
  );
  const days = new Map((dated.data?.points ?? []).map((point) => [point.id, point.at]));
  return (
    <Loaded reading={comparison}>
      {(data) => <ComparisonFigures comparison={data} names={names} repsName={repsName} days={days} />}
    </Loaded>
  );
}
