import { type ReactNode, useState } from 'react';
import type { Before } from '../../../../shared-types/log/setup.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Check, Select, TextField } from '../../../parts/controls/field.tsx';
import { Segmented } from '../../../parts/controls/segmented.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { type Choice, narrowings } from '../address/choice.ts';
import { datesOf, dayOf, offeredWeeks, type Span, spanLimits } from '../address/span.ts';
import type { Chosen } from '../address/use-choice.ts';
import styles from './filter-bar.module.css';

/** What the sets at hand can be narrowed by. */
export interface Offered {
  readonly stations: readonly { readonly sheet: string; readonly station: string }[];
  /** Whether all stations together are a choice. */
  readonly allStations: boolean;
  readonly loadsKg: readonly (number | null)[];
  readonly before: readonly Before[];
  readonly tags: readonly string[];
  /** None where the judge is no choice. */
  readonly judges: readonly { readonly id: string; readonly name: string }[];
}

/** Station and time in sight, the rest behind a press; everything stands in the address. */
export function FilterBar({ chosen, offered, sheet }: { chosen: Chosen; offered: Offered; sheet: string }) {
  const words = useWords().review.filters;
  const { choice, change, reset } = chosen;
  const inUse = narrowings(choice);
  const narrowed = inUse > 0 || choice.span.kind !== 'all';
  const stations = [
    ...(offered.allStations ? [{ value: '', label: words.anyStation }] : []),
    ...offered.stations.map(({ sheet: id, station }) => ({ value: id, label: station })),
  ];
  return (
    <search className={styles.bar} aria-label={words.title}>
      <div className={styles.row}>
        {stations.length > 4 ? (
          <Select
            label={words.station}
            value={sheet}
            options={stations}
            onChange={(next) => change({ sheet: next, loadsKg: [], tags: [] })}
          />
        ) : (
          <Segmented
            label={words.station}
            value={sheet}
            options={stations}
            onChange={(next) => change({ sheet: next, loadsKg: [], tags: [] })}
          />
        )}
        <SpanChoice span={choice.span} onChange={(span) => change({ span })} />
        {narrowed ? (
          <Button weight="quiet" onClick={reset}>
            {words.reset}
          </Button>
        ) : null}
      </div>
      <details className={styles.more} open={inUse > 0 || undefined}>
        <summary>{inUse === 0 ? words.more : words.moreInUse(inUse)}</summary>
        <MoreFilters choice={choice} offered={offered} change={change} />
      </details>
    </search>
  );
}

function MoreFilters({
  choice,
  offered,
  change,
}: {
  choice: Choice;
  offered: Offered;
  change: (part: Partial<Choice>) => void;
}) {
  const words = useWords().review.filters;
  const loads = union(offered.loadsKg, choice.loadsKg);
  const tags = union(offered.tags, choice.tags).slice(0, 24);
  return (
    <div className={styles.groups}>
      {loads.length < 2 ? null : (
        <Group name={words.load}>
          {loads.map((load) => (
            <Check
              key={String(load)}
              label={words.loadOf(load)}
              checked={choice.loadsKg.includes(load)}
              onChange={(on) => change({ loadsKg: toggled(choice.loadsKg, load, on) })}
            />
          ))}
        </Group>
      )}
      <Group name={words.before}>
        {union(offered.before, choice.before).map((value) => (
          <Check
            key={value}
            label={words.beforeOf[value]}
            checked={choice.before.includes(value)}
            onChange={(on) => change({ before: toggled(choice.before, value, on) })}
          />
        ))}
      </Group>
      {tags.length === 0 ? null : (
        <Group name={words.tags}>
          {tags.map((tag) => (
            <Check
              key={tag}
              label={tag}
              checked={choice.tags.includes(tag)}
              onChange={(on) => change({ tags: toggled(choice.tags, tag, on) })}
            />
          ))}
        </Group>
      )}
      {offered.judges.length === 0 ? null : (
        <Select
          label={words.judge}
          value={choice.judge}
          options={[
            { value: '', label: words.anyJudge },
            ...offered.judges.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={(judge) => change({ judge })}
        />
      )}
    </div>
  );
}

function Group({ name, children }: { name: string; children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend>{name}</legend>
      {children}
    </fieldset>
  );
}

/** A span of time: all of it, the last weeks, or from a day to a day. */
function SpanChoice({ span, onChange }: { span: Span; onChange: (span: Span) => void }) {
  const words = useWords().review.filters;
  // Choosing "from a day" shows the fields before a day is chosen.
  const [ownDays, setOwnDays] = useState(false);
  const shown = span.kind === 'dates' || (ownDays && span.kind === 'all');
  const value = shown ? 'dates' : span.kind === 'last' ? String(span.weeks) : 'all';
  const weeks = span.kind === 'last' ? union(offeredWeeks, [span.weeks]) : offeredWeeks;
  const dates = span.kind === 'dates' ? span : { from: '', to: '' };
  const choose = (next: string): void => {
    setOwnDays(next === 'dates');
    if (next === 'all') onChange({ kind: 'all' });
    else if (next !== 'dates') onChange({ kind: 'last', weeks: Number(next) });
    else {
      const { from } = spanLimits(span, Date.now());
      onChange(datesOf(from === null ? null : dayOf(from), null));
    }
  };
  return (
    <>
      <Select
        label={words.span}
        value={value}
        options={[
          { value: 'all', label: words.all },
          ...weeks.map((count) => ({ value: String(count), label: words.lastWeeks(count) })),
          { value: 'dates', label: words.dates },
        ]}
        onChange={choose}
      />
      {shown ? (
        <div className={styles.days}>
          <TextField
            label={words.from}
            type="date"
            value={dates.from}
            onChange={(from) => onChange(datesOf(from, dates.to))}
          />
          <TextField
            label={words.to}
            type="date"
            value={dates.to}
            onChange={(to) => onChange(datesOf(dates.from, to))}
          />
        </div>
      ) : null}
    </>
  );
}

function union<T>(offered: readonly T[], chosen: readonly T[]): readonly T[] {
  return [...new Set([...offered, ...chosen])];
}

function toggled<T>(list: readonly T[], item: T, on: boolean): readonly T[] {
  const others = list.filter((other) => other !== item);
  return on ? [...others, item] : others;
}
