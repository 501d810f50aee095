import { calledName } from '../../../../shared-types/people.ts';
import { Check, Select, TextField } from '../../../parts/controls/field.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useWords } from '../../../parts/words/words.tsx';
import type { FilterChoice } from './filter-choice.ts';
import styles from './sets-screen.module.css';

interface FilterFormProps {
  readonly choice: FilterChoice;
  readonly onChange: (part: Partial<FilterChoice>) => void;
}

/** Everything a list of sets can be narrowed by, but for the search. */
export function FilterForm({ choice, onChange }: FilterFormProps) {
  const words = useWords().judge;
  const { sets } = words;
  const people = useCall('people of filters', (client, signal) => client.people.list({ archived: true }, { signal }), {
    topics: ['people'],
  });
  const sheets = useCall('sheets of filters', (client, signal) => client.standards.list(undefined, { signal }), {
    topics: ['standards'],
  });
  const any = { value: '', label: sets.any };
  const those = (role: 'athlete' | 'judge') =>
    (people.data ?? [])
      .filter((line) => line.person[role])
      .map(({ person }) => ({ value: person.id, label: calledName(person) }));
  return (
    <div className={styles.filters}>
      <Select
        label={sets.athlete}
        value={choice.athlete}
        options={[any, ...those('athlete')]}
        onChange={(athlete) => onChange({ athlete })}
      />
      <Select
        label={sets.judge}
        value={choice.judge}
        options={[any, ...those('judge')]}
        onChange={(judge) => onChange({ judge })}
      />
      <Select
        label={sets.station}
        value={choice.sheet}
        options={[any, ...(sheets.data ?? []).map((sheet) => ({ value: sheet.id, label: sheet.station }))]}
        onChange={(sheet) => onChange({ sheet })}
      />
      <NumberField label={sets.load} unit="kg" value={choice.loadKg} onChange={(loadKg) => onChange({ loadKg })} />
      <Select
        label={sets.came}
        value={choice.before}
        options={[
          any,
          ...(['fresh', 'run', 'station'] as const).map((value) => ({ value, label: words.before[value] })),
        ]}
        onChange={(before) => onChange({ before })}
      />
      <TextField label={sets.tag} value={choice.tag} maxLength={40} onChange={(tag) => onChange({ tag })} />
      <TextField label={sets.from} type="date" value={choice.from} onChange={(from) => onChange({ from })} />
      <TextField label={sets.to} type="date" value={choice.to} onChange={(to) => onChange({ to })} />
      <Select
        label={sets.state}
        value={choice.phase}
        options={[
          { value: '' as const, label: sets.any },
          ...(['running', 'finished', 'abandoned'] as const).map((value) => ({ value, label: sets.phases[value] })),
        ]}
        onChange={(phase) => onChange({ phase })}
      />
      <Select
        label={sets.practice}
        value={choice.practice}
        options={(['without', 'with', 'only'] as const).map((value) => ({ value, label: sets.practiceChoice[value] }))}
        onChange={(practice) => onChange({ practice })}
      />
      <Check
        label={sets.unexplained}
        checked={choice.unexplained}
        onChange={(unexplained) => onChange({ unexplained })}
      />
    </div>
  );
}
