import { useDeferredValue, useState } from 'react';
import type { SetLine } from '../../../../shared-types/contract/sets.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { TextField } from '../../../parts/controls/field.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { saveFile } from '../../../parts/controls/save-file.ts';
import { failureOf } from '../../../parts/desk/failure.ts';
import { useLink } from '../../../parts/desk/link.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { filterOf, filtersInUse, noFilter } from './filter-choice.ts';
import { FilterForm } from './filter-form.tsx';
import { SetRow, SetRows } from './set-row.tsx';
import styles from './sets-screen.module.css';

const pageSize = 40;

/** Every set: found, opened, exported, printed. */
export function SetsScreen() {
  const words = useWords().judge;
  const link = useLink();
  const { tell, tellFailure } = useNotices();
  const [choice, setChoice] = useState(noFilter);
  const [pages, setPages] = useState(1);
  const inUse = filtersInUse(choice);
  const filter = useDeferredValue(filterOf(choice));
  const list = useCall(
    `sets ${pages} ${JSON.stringify(filter)}`,
    async (client, signal) => {
      const lines: SetLine[] = [];
      let after: string | null = null;
      let total = 0;
      for (let page = 0; page < pages; page += 1) {
        const answer: Awaited<ReturnType<typeof client.sets.list>> = await client.sets.list(
          { filter, after, limit: pageSize },
          { signal },
        );
        lines.push(...answer.lines);
        total = answer.total;
        after = answer.next;
        if (after === null) break;
      }
      return { lines, total, more: after !== null };
    },
    { topics: ['sets', 'people'], keep: true },
  );
  const change = (part: Partial<typeof choice>): void => {
    setPages(1);
    setChoice((before) => ({ ...before, ...part }));
  };
  const save = async (format: 'csv' | 'json'): Promise<void> => {
    try {
      const file = await link.client.sets.export({ filter, format });
      saveFile(file);
      tell(words.sets.exported(file.fileName));
    } catch (error) {
      tellFailure(failureOf(error));
    }
  };
  const narrowed = inUse > 0 || choice.search.trim() !== '';
  return (
    <Page
      title={words.sets.title}
      intro={words.sets.intro}
      help={words.sets.help}
      above={
        <LinkButton href="/" weight="quiet">
          <ArrowLeft />
          {words.setup.title}
        </LinkButton>
      }
      actions={
        <>
          <Button onClick={() => void save('csv')}>{words.sets.exportCsv}</Button>
          <Button onClick={() => void save('json')}>{words.sets.exportJson}</Button>
          <Button onClick={() => window.print()}>{words.finished.actions.print}</Button>
        </>
      }
    >
      <search className={`${styles.search} no-print`}>
        <TextField
          label={words.sets.search}
          hint={words.sets.searchHint}
          type="search"
          maxLength={200}
          value={choice.search}
          onChange={(search) => change({ search })}
        />
        <details className={styles.more}>
          <summary>{inUse === 0 ? words.sets.filters : words.sets.filtersInUse(inUse)}</summary>
          <FilterForm choice={choice} onChange={change} />
        </details>
      </search>
      <Loaded reading={list}>
        {({ lines, total, more }) =>
          total === 0 ? (
            <EmptyState
              title={narrowed ? words.sets.noMatch : words.sets.empty}
              {...(narrowed ? {} : { text: words.sets.emptyHint })}
              action={
                narrowed ? (
                  <Button onClick={() => change(noFilter)}>{words.sets.clear}</Button>
                ) : (
                  <LinkButton href="/" weight="main">
                    {words.setup.title}
                  </LinkButton>
                )
              }
            />
          ) : (
            <section aria-label={words.sets.title}>
              <p className={styles.count} role="status">
                {words.sets.count(total)}
              </p>
              <SetRows>
                {lines.map((line) => (
                  <SetRow key={line.id} line={line} />
                ))}
              </SetRows>
              {more ? (
                <div className="no-print">
                  <Button busy={list.reading} onClick={() => setPages(pages + 1)}>
                    {words.sets.more}
                  </Button>
                </div>
              ) : null}
            </section>
          )
        }
      </Loaded>
    </Page>
  );
}
