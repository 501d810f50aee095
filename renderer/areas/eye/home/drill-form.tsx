import type { DrillKind } from '../../../../shared-types/drills/drill.ts';
import { shownFaults } from '../../../../shared-types/drills/numbers.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Check, Select } from '../../../parts/controls/field.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { faultName } from '../use-call-text.ts';
import { amounts, type Choice, withSheet } from './choice.ts';
import styles from './drill-form.module.css';
import { FaultChoice } from './fault-choice.tsx';
import { KindChoice } from './kind-choice.tsx';

interface DrillFormProps {
  readonly choice: Choice;
  readonly sheets: readonly StandardSheet[];
  readonly busy: boolean;
  readonly onChange: (choice: Choice) => void;
  readonly onStart: () => void;
  /** Who is judging, above the rest. */
  readonly children: React.ReactNode;
}

/** Everything that is fixed before a drill, filled in as far as it can be. */
export function DrillForm({ choice, sheets, busy, onChange, onStart, children }: DrillFormProps) {
  const words = useWords().eye.setup;
  const formats = useFormats();
  const change = (part: Partial<Choice>): void => onChange({ ...choice, ...part });
  const sheet = sheets.find((item) => item.id === choice.sheet);
  const shown = sheet === undefined ? [] : shownFaults(sheet);
  const several = choice.kind === 'single' || choice.kind === 'stream';
  const oneFault = !several || choice.faults.length === 1;
  const repsLabel: Readonly<Record<DrillKind, string>> = {
    single: words.reps,
    stream: words.reps,
    line: words.repsMost,
    place: words.repsEach,
  };
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onStart();
      }}
    >
      {children}
      <KindChoice value={choice.kind} onChange={(kind) => change({ kind })} />
      <Segmented
        label={words.station}
        value={choice.sheet}
        options={sheets.map((item) => ({ value: item.id, label: item.station }))}
        onChange={(id) =>
          onChange(
            withSheet(
              choice,
              sheets.find((item) => item.id === id),
            ),
          )
        }
      />
      {sheet === undefined ? null : several ? (
        <FaultChoice sheet={sheet} shown={shown} chosen={choice.faults} onChange={(faults) => change({ faults })} />
      ) : (
        <Segmented
          label={words.fault}
          value={choice.fault}
          options={shown.map((code) => ({ value: code, label: faultName(sheet, code) }))}
          onChange={(fault) => change({ fault })}
        />
      )}
      <Segmented
        label={repsLabel[choice.kind]}
        value={String(choice.reps[choice.kind])}
        options={amounts[choice.kind].map((count) => ({ value: String(count), label: words.amount(count) }))}
        onChange={(count) => change({ reps: { ...choice.reps, [choice.kind]: Number(count) } })}
      />
      <details className={styles.more}>
        <summary>{words.more}</summary>
        <div className={styles.inside}>
          {several ? (
            <Segmented
              label={words.size}
              value={choice.size}
              options={(['gross', 'usual', 'fine'] as const).map((size) => ({ value: size, label: words.sizes[size] }))}
              onChange={(size) => change({ size })}
            />
          ) : null}
          <Segmented
            label={words.pace}
            value={choice.pace}
            options={(['slow', 'usual', 'fast'] as const).map((pace) => ({ value: pace, label: words.paces[pace] }))}
            onChange={(pace) => change({ pace })}
          />
          {choice.kind === 'place' || !oneFault ? null : (
            <PlaceChoice value={choice.place} onChange={(place) => change({ place })} />
          )}
          {sheet === undefined || sheet.heightsM.length === 0 ? null : (
            <Select
              label={sheet.heightName === '' ? words.height : sheet.heightName}
              value={String(choice.heightM)}
              options={sheet.heightsM.map((height) => ({ value: String(height), label: formats.metres(height) }))}
              onChange={(height) => change({ heightM: Number(height) })}
            />
          )}
          <Check
            label={words.practice}
            hint={words.practiceHint}
            checked={choice.practice}
            onChange={(practice) => change({ practice })}
          />
        </div>
      </details>
      <div className={styles.start}>
        <Button type="submit" weight="main" large busy={busy}>
          {words.start}
        </Button>
      </div>
    </form>
  );
}

interface PlaceChoiceProps {
  readonly value: Choice['place'];
  readonly onChange: (place: Choice['place']) => void;
}

function PlaceChoice({ value, onChange }: PlaceChoiceProps) {
  const words = useWords().eye;
  return (
    <Segmented
      label={words.setup.place}
      value={value}
      options={(['advised', 'poor'] as const).map((place) => ({ value: place, label: words.places[place] }))}
      onChange={onChange}
    />
  );
}
