import { useState } from 'react';
import type { DrillFilter } from '../../../../shared-types/contract/drills.ts';
import type { DrillKind } from '../../../../shared-types/drills/drill.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { Check, Select } from '../../../parts/controls/field.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { saveFile } from '../../../parts/controls/save-file.ts';
import { useAction } from '../../../parts/desk/use-action.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { failureText, useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { shownSheets } from '../home/choice.ts';
import { DrillRows } from './drill-rows.tsx';
import styles from './drills-screen.module.css';

const kinds: readonly DrillKind[] = ['single', 'stream', 'line', 'place'];
const first = 30;
const most = 200;

/** Every drill, narrowed and exported. */
export function DrillsScreen() {
  const all = useWords();
  const words = all.eye;
  const { tell } = useNotices();
  const [judge, setJudge] = useState('');
  const [sheet, setSheet] = useState('');
  const [kind, setKind] = useState<DrillKind | ''>('');
  const [practice, setPractice] = useState(false);
  const [limit, setLimit] = useState(first);
  const filter: DrillFilter = {
    ...(judge === '' ? {} : { judge }),
    ...(sheet === '' ? {} : { sheet }),
    ...(kind === '' ? {} : { kind }),
    practice: practice ? 'with' : 'without',
  };
  const choices = useCall('eye choices', async (client, signal) => {
    const [people, sheets] = await Promise.all([
      client.people.list({ archived: true }, { signal }),
      client.standards.list(undefined, { signal }),
    ]);
    return { people: people.filter((line) => line.person.judge), sheets: shownSheets(sheets) };
  });
  const list = useCall(
    `eye drills ${JSON.stringify(filter)} ${limit}`,
    (client, signal) => client.drills.list({ filter, after: null, limit }, { signal }),
    { keep: true },
  );
  const save = useAction((client, wanted: DrillFilter, format: 'csv' | 'json') =>
    client.drills.export({ filter: wanted, format }),
  );
  const exportAs = async (format: 'csv' | 'json'): Promise<void> => {
    const file = await save.run(filter, format);
    if (file === undefined) return;
    saveFile(file);
    tell(words.list.saved(file.fileName));
  };
  const any = { value: '', label: words.list.any } as const;
  return (
    <Page
      title={words.list.title}
      intro={words.list.intro}
      help={words.list.help}
      above={
        <LinkButton href="/" weight="quiet">
          {words.title}
        </LinkButton>
      }
      actions={
        <>
          <Button busy={save.busy} onClick={() => void exportAs('csv')}>
            {words.list.csv}
          </Button>
          <Button busy={save.busy} onClick={() => void exportAs('json')}>
            {words.list.json}
          </Button>
        </>
      }
    >
      {save.failure === undefined ? null : <p role="alert">{failureText(save.failure, all)}</p>}
      <Loaded reading={choices}>
        {({ people, sheets }) => (
          <div className={styles.filter}>
            <Select
              label={words.list.judge}
              value={judge}
              options={[any, ...people.map(({ person }) => ({ value: person.id, label: calledName(person) }))]}
              onChange={setJudge}
            />
            <Select
              label={words.list.station}
              value={sheet}
              options={[any, ...sheets.map((item) => ({ value: item.id, label: item.station }))]}
              onChange={setSheet}
            />
            <Select<DrillKind | ''>
              label={words.list.kind}
              value={kind}
              options={[any, ...kinds.map((item) => ({ value: item, label: words.kinds[item] }))]}
              onChange={setKind}
            />
            <Check label={words.list.practice} checked={practice} onChange={setPractice} />
          </div>
        )}
      </Loaded>
      <Loaded reading={list}>
        {({ lines, total }) => (
          <section className={styles.list} aria-label={words.list.title}>
            <p role="status">{total === 0 ? words.list.empty : words.list.count(total)}</p>
            <DrillRows lines={lines} withJudge />
            {total > lines.length && limit < most ? (
              <div>
                <Button onClick={() => setLimit(Math.min(most, limit * 2))}>{words.list.more}</Button>
              </div>
            ) : null}
          </section>
        )}
      </Loaded>
    </Page>
  );
}
