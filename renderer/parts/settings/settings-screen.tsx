import { useState } from 'react';
import type { Settings } from '../../../shared-types/contract/settings.ts';
import { CautionsDialog } from '../cautions/cautions.tsx';
import { Button } from '../controls/button.tsx';
import { Card } from '../controls/card.tsx';
import { Check } from '../controls/field.tsx';
import { Loaded } from '../controls/loaded.tsx';
import { NumberField } from '../controls/number-field.tsx';
import { Segmented } from '../controls/segmented.tsx';
import { useSettings } from '../desk/settings.tsx';
import { useCall } from '../desk/use-call.ts';
import { KeyEditor } from '../keys/key-editor.tsx';
import { Page } from '../shell/page.tsx';
import { useWords } from '../words/words.tsx';
import styles from './settings-screen.module.css';

const themes: readonly Settings['theme'][] = ['system', 'paper', 'hall'];

export function SettingsScreen() {
  const words = useWords();
  const { settings, put } = useSettings();
  const about = useCall('about', (client, signal) => client.desk.about(undefined, { signal }));
  const [cautionsOpen, setCautionsOpen] = useState(false);
  const own = words.settings;
  return (
    <Page title={own.title} help={own.help}>
      <div className={styles.pair}>
        <Card title={own.look}>
          <Segmented
            label={own.look}
            bare
            value={settings.theme}
            options={themes.map((value) => ({ value, label: own.looks[value] }))}
            onChange={(theme) => void put({ theme })}
          />
          <p className={styles.hint}>{own.lookHint}</p>
        </Card>
        <Card title={own.sound}>
          <Check
            label={own.sounds}
            hint={own.soundsHint}
            checked={settings.sounds}
            onChange={(sounds) => void put({ sounds })}
          />
          <Check
            label={own.spoken}
            checked={settings.spokenCounts}
            onChange={(spokenCounts) => void put({ spokenCounts })}
          />
          <Countdown />
        </Card>
      </div>
      <Card title={words.keys.title}>
        <KeyEditor />
      </Card>
      <Card title={own.program}>
        <Loaded reading={about}>
          {({ version, host, databasePath }) => (
            <dl className={styles.facts}>
              <dt>{own.version}</dt>
              <dd>{version}</dd>
              <dt>{own.host}</dt>
              <dd>{own.hosts[host]}</dd>
              <dt>{own.database}</dt>
              <dd>
                <code>{databasePath}</code>
                <p className={styles.hint}>{own.databaseHint}</p>
              </dd>
            </dl>
          )}
        </Loaded>
        <div>
          <Button onClick={() => setCautionsOpen(true)}>{words.cautions.readAgain}</Button>
        </div>
      </Card>
      <CautionsDialog open={cautionsOpen} onRead={() => setCautionsOpen(false)} />
    </Page>
  );
}

/** Stored only while it is a whole number of seconds in range. */
function Countdown() {
  const words = useWords().settings;
  const { settings, put } = useSettings();
  const [typed, setTyped] = useState<number | null | undefined>(undefined);
  const value = typed === undefined ? settings.countdownS : typed;
  const good = value !== null && Number.isInteger(value) && value >= 0 && value <= 60;
  return (
    <NumberField
      label={words.countdown}
      unit={words.secondsUnit}
      value={value}
      error={good ? undefined : words.countdownError}
      onChange={(next) => {
        setTyped(next);
        if (next !== null && Number.isInteger(next) && next >= 0 && next <= 60) void put({ countdownS: next });
      }}
    />
  );
}
