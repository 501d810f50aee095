import type { GoalKind } from '../../../../shared-types/log/setup.ts';
import { Button } from '../../../parts/controls/button.tsx';
import { Select } from '../../../parts/controls/field.tsx';
import { NumberField } from '../../../parts/controls/number-field.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { Group } from './group.tsx';
import { amountFor, type StationEntry, stationFor } from './night-entry.ts';
import styles from './night-form.module.css';
import type { FieldsProps } from './night-form.tsx';

/** What the contract allows. */
const mostStations = 6;

export function StationFields({ entry, known, problems, change }: FieldsProps) {
  const words = useWords().night.form;
  const { stations } = entry;
  const put = (index: number, station: StationEntry): void =>
    change({ stations: stations.map((item, place) => (place === index ? station : item)) });
  const another = known.sheets.find(({ id }) => stations.every(({ sheet }) => sheet !== id)) ?? known.sheets[0];
  return (
    <Group title={words.stationsTitle} hint={words.stationsHint} problem={problems.stations}>
      {stations.map((station, index) => {
        const sheet = known.sheets.find(({ id }) => id === station.sheet);
        const amount = station.kind === 'clock' && station.amount !== null ? station.amount / 60_000 : station.amount;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: stations have no name of their own, and are only added at the end.
          <fieldset key={index} className={styles.station}>
            <legend>{words.station(index + 1)}</legend>
            <Select
              label={words.sheet}
              value={station.sheet}
              options={known.sheets.map(({ id, station: label }) => ({ value: id, label }))}
              onChange={(id) => {
                const chosen = known.sheets.find((item) => item.id === id);
                if (chosen !== undefined) put(index, stationFor(chosen));
              }}
            />
            <Select<GoalKind>
              label={words.goal}
              value={station.kind}
              options={(sheet?.goals ?? [station.kind]).map((value) => ({ value, label: words.goalKinds[value] }))}
              onChange={(kind) =>
                put(index, { ...station, kind, amount: sheet === undefined ? null : amountFor(kind, sheet) })
              }
            />
            {station.kind === 'open' ? null : (
              <NumberField
                key={station.kind}
                label={words.amount[station.kind]}
                value={amount}
                error={problems[`amount ${index}`]}
                onChange={(value) => {
                  const clock = station.kind === 'clock' && value !== null;
                  put(index, { ...station, amount: clock ? Math.round(value * 60_000) : value });
                }}
              />
            )}
            <NumberField
              label={words.load}
              unit={words.kilograms}
              optional
              value={station.loadKg}
              error={problems[`load ${index}`]}
              onChange={(loadKg) => put(index, { ...station, loadKg })}
            />
            <NumberField
              label={words.height}
              unit={words.metres}
              optional
              value={station.heightM}
              error={problems[`height ${index}`]}
              onChange={(heightM) => put(index, { ...station, heightM })}
            />
            {stations.length === 1 ? null : (
              <Button
                weight="quiet"
                onClick={() => change({ stations: stations.filter((_, place) => place !== index) })}
              >
                {words.removeStation(index + 1)}
              </Button>
            )}
          </fieldset>
        );
      })}
      {another === undefined || stations.length >= mostStations ? null : (
        <div>
          <Button onClick={() => change({ stations: [...stations, stationFor(another)] })}>{words.addStation}</Button>
        </div>
      )}
    </Group>
  );
}
