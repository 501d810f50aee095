import { Card } from '../../../parts/controls/card.tsx';
import { Check, Select, TextArea, TextField } from '../../../parts/controls/field.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useWords, type Words } from '../../../parts/words/words.tsx';
import type { SheetEntry } from './sheet-entry.ts';
import styles from './sheet-form.module.css';
import type { FormFields } from './sheet-form.tsx';

const goalKinds = ['reps', 'metres', 'clock', 'open'] as const;
const consequences = ['repeat', 'metres-back', 'seconds-added'] as const;
const movements = ['wall-throw', 'jump-burpee', 'box-jump-over', 'other'] as const;

function optionsOf<T extends string>(values: readonly T[], names: Readonly<Record<T, string>>) {
  return values.map((value) => ({ value, label: names[value] }));
}

/** All of a sheet but its faults. */
export function StationFields(fields: FormFields<SheetEntry>) {
  const words = useWords().standards.form;
  return (
    <>
      <Basics {...fields} words={words} />
      <Rules {...fields} words={words} />
      <Gear {...fields} words={words} />
    </>
  );
}

type Part = FormFields<SheetEntry> & { readonly words: Words['standards']['form'] };

function Basics({ entry, change, problem, words }: Part) {
  return (
    <Card title={words.basics}>
      <div className={styles.pair}>
        <TextField
          label={words.station}
          hint={words.stationHint}
          value={entry.station}
          error={problem('station')}
          onChange={(station) => change({ station })}
        />
        <TextField
          label={words.repsName}
          hint={words.repsNameHint}
          value={entry.repsName}
          error={problem('repsName')}
          onChange={(repsName) => change({ repsName })}
        />
      </div>
      <TextArea
        label={words.summary}
        value={entry.summary}
        error={problem('summary')}
        onChange={(summary) => change({ summary })}
      />
      <Select
        className={styles.short}
        label={words.movement}
        hint={words.movementHint}
        value={entry.movement}
        options={optionsOf(movements, words.movements)}
        onChange={(movement) => change({ movement })}
      />
    </Card>
  );
}

function Rules({ entry, change, problem, words }: Part) {
  const goalProblem = problem('goals');
  return (
    <Card title={words.rules}>
      <fieldset className={styles.checks}>
        <legend>{words.goals}</legend>
        {goalKinds.map((kind) => (
          <Check
            key={kind}
            label={words.goalKinds[kind]}
            checked={entry.goals.includes(kind)}
            onChange={(wanted) =>
              change({ goals: goalKinds.filter((item) => (item === kind ? wanted : entry.goals.includes(item))) })
            }
          />
        ))}
        {goalProblem === undefined ? null : <p className={styles.problem}>{goalProblem}</p>}
      </fieldset>
      <div className={styles.pair}>
        <Select
          label={words.usualKind}
          value={entry.usualKind}
          error={problem('usualGoal.kind')}
          options={optionsOf(goalKinds, words.goalKinds)}
          onChange={(usualKind) => change({ usualKind })}
        />
        {entry.usualKind === 'open' ? null : (
          <NumberField
            label={words.usualAmount[entry.usualKind]}
            value={entry.usualAmount}
            error={problem('usualGoal.amount')}
            onChange={(usualAmount) => change({ usualAmount })}
          />
        )}
      </div>
      <div className={styles.pair}>
        <Segmented
          label={words.consequence}
          value={entry.consequence}
          options={optionsOf(consequences, words.consequences)}
          onChange={(consequence) => change({ consequence })}
        />
        {entry.consequence === 'repeat' ? null : (
          <NumberField
            label={words.consequenceAmount[entry.consequence]}
            value={entry.consequenceAmount}
            error={problem('consequence.metres') ?? problem('consequence.seconds')}
            onChange={(consequenceAmount) => change({ consequenceAmount })}
          />
        )}
      </div>
    </Card>
  );
}

function Gear({ entry, change, problem, words }: Part) {
  return (
    <Card title={words.gear}>
      <div className={styles.pair}>
        <TextField
          label={words.loads}
          optional
          hint={words.numbersHint}
          value={entry.loads}
          error={problem('loadsKg')}
          onChange={(loads) => change({ loads })}
        />
        <NumberField
          label={words.markEvery}
          optional
          value={entry.markEveryM}
          error={problem('markEveryM')}
          onChange={(markEveryM) => change({ markEveryM })}
        />
        <TextField
          label={words.heights}
          optional
          hint={words.numbersHint}
          value={entry.heights}
          error={problem('heightsM')}
          onChange={(heights) => change({ heights })}
        />
        <TextField
          label={words.heightName}
          optional
          hint={words.heightNameHint}
          value={entry.heightName}
          error={problem('heightName')}
          onChange={(heightName) => change({ heightName })}
        />
      </div>
      <TextArea
        label={words.equipment}
        optional
        hint={words.linesHint}
        value={entry.equipment}
        error={problem('equipment')}
        onChange={(equipment) => change({ equipment })}
      />
      <TextArea
        label={words.cautions}
        optional
        hint={words.linesHint}
        value={entry.cautions}
        error={problem('cautions')}
        onChange={(cautions) => change({ cautions })}
      />
    </Card>
  );
}
