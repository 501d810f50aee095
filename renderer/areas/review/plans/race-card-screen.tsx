import { useState } from 'react';
import type { Subject, Subjects } from '../../../../shared-types/contract/review/filter.ts';
import { TextField } from '../../../parts/controls/field.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { readSpan } from '../../../parts/controls/read-span.ts';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { put } from '../address/choice.ts';
import { readGoal, writeGoal } from '../address/goal.ts';
import { placeWith } from '../address/places.ts';
import { useChoice } from '../address/use-choice.ts';
import { NoSets, stationOf } from '../athlete/athlete-screen.tsx';
import { Actions } from '../view/actions.tsx';
import { useReview } from '../view/use-review.ts';
import { useSheets } from '../view/use-sheets.ts';
import { useSubjects } from '../view/use-subjects.ts';
import { View } from '../view/view.tsx';
import { GoalFields } from './goal-fields.tsx';
import { endingKinds, useGoalPhrase, usualGoal } from './goal-text.ts';
import styles from './plans.module.css';
import { RaceCardPage } from './race-card-page.tsx';

/** What an athlete takes along to the race: one printed page. */
export function RaceCardScreen({ id }: { id: string }) {
  const words = useWords().review;
  const subjects = useSubjects();
  const found = subjects.data?.athletes.find((subject) => subject.person.id === id);
  if (subjects.data === undefined || found === undefined) {
    return (
      <View title={words.view.raceCard}>
        <Loaded reading={subjects}>{() => <NoSets />}</Loaded>
      </View>
    );
  }
  return <Card subject={found} subjects={subjects.data} />;
}

function Card({ subject, subjects }: { subject: Subject; subjects: Subjects }) {
  const words = useWords().review;
  const texts = words.plans.card;
  const chosen = useChoice();
  const phrase = useGoalPhrase();
  const sheets = useSheets();
  const { params, edit } = chosen;
  const station = stationOf(subject, chosen);
  const sheet = station?.sheet ?? '';
  const known = subjects.stations.find((item) => item.sheet === sheet);
  const [first] = endingKinds(sheets.get(sheet));
  const goal = readGoal(params.get('goal')) ?? usualGoal(first ?? 'reps');
  const wishedMs = goal.kind === 'clock' ? null : wishOf(params.get('wish'));
  const choice = { ...chosen.choice, sheet };
  const input = { filter: { ...chosen.filter, athlete: subject.person.id, sheet }, goal, wishedMs };
  const card = useReview(`card ${JSON.stringify(input)}`, (client, signal) =>
    client.review.raceCard(input, { signal }),
  );
  return (
    <View
      title={texts.title(subject.person.name, known?.station ?? sheet)}
      back={{
        href: placeWith(`/athlete/${subject.person.id}`, choice, { goal: params.get('goal') ?? '' }),
        text: words.view.subject(subject.person.name, known?.station ?? sheet),
      }}
      stale={card.reading && card.data !== undefined}
      filters={
        <div className={styles.fields}>
          <GoalFields
            goal={goal}
            sheet={sheets.get(sheet)}
            onChange={(next) => edit((all) => put(all, 'goal', writeGoal(next)))}
          />
          {goal.kind === 'clock' ? null : (
            <WishField
              wishedMs={wishedMs}
              onChange={(next) => edit((all) => put(all, 'wish', next === null ? '' : String(next / 1_000)))}
            />
          )}
        </div>
      }
      actions={<Actions of={[{ view: 'race-card', ...input }]} />}
    >
      <Loaded reading={card}>
        {(data) => <RaceCardPage card={data} goal={phrase(goal, data.station.repsName)} />}
      </Loaded>
    </View>
  );
}

/** Seconds in the address; null where there is no wish, or none that a set could have. */
function wishOf(text: string | null): number | null {
  const wished = Math.round(Number(text ?? '') * 1_000);
  return wished >= 1_000 && wished <= 86_400_000 ? wished : null;
}

function WishField({ wishedMs, onChange }: { wishedMs: number | null; onChange: (next: number | null) => void }) {
  const texts = useWords().review.plans.card;
  const { duration } = useFormats();
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed ?? (wishedMs === null ? '' : duration(wishedMs, 0));
  const wrong = typed !== null && typed.trim() !== '' && readSpan(typed) === null;
  return (
    <TextField
      label={texts.wish}
      hint={texts.wishHint}
      optional
      inputMode="numeric"
      maxLength={8}
      value={shown}
      error={wrong ? texts.badWish : undefined}
      onBlur={() => (wrong ? undefined : setTyped(null))}
      onChange={(next) => {
        setTyped(next);
        if (next.trim() === '') onChange(null);
        // A figure without a colon is still being typed: "5" may become "5:30".
        else if (next.includes(':')) {
          const span = readSpan(next);
          if (span !== null) onChange(span);
        }
      }}
    />
  );
}
