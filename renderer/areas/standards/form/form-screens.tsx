import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { useVersions } from '../use-versions.ts';
import { emptySheet, entryOf, newSheetId } from './sheet-entry.ts';
import { SheetForm } from './sheet-form.tsx';

/** Writes version 1 of a new sheet. */
export function NewSheetScreen() {
  const words = useWords().standards;
  const sheets = useCall('sheets', (client, signal) => client.standards.list(undefined, { signal }));
  return (
    <Page title={words.form.newTitle} help={words.form.help} above={<Back href="/" text={words.back} />}>
      <Loaded reading={sheets}>
        {(list) => (
          <SheetForm
            name="new"
            initial={emptySheet}
            version={1}
            idFor={(station) => newSheetId(station, new Set(list.map((sheet) => sheet.id)))}
            leaveTo="/"
          />
        )}
      </Loaded>
    </Page>
  );
}

/** Writes the version after the latest one. */
export function NextVersionScreen({ id }: { id: string }) {
  const words = useWords().standards;
  const versions = useVersions(id);
  const latest: StandardSheet | undefined = versions.data?.[0];
  return (
    <Page
      title={latest === undefined ? words.next : words.form.nextTitle(latest.station)}
      help={words.form.help}
      above={<Back href={`/sheet/${id}`} text={words.versionsBack} />}
    >
      <Loaded reading={versions}>
        {() =>
          latest === undefined ? (
            <EmptyState title={words.missing} />
          ) : (
            <SheetForm
              name={`${id} ${latest.version + 1}`}
              initial={entryOf(latest)}
              version={latest.version + 1}
              idFor={() => id}
              leaveTo={`/sheet/${id}`}
            />
          )
        }
      </Loaded>
    </Page>
  );
}

function Back({ href, text }: { href: string; text: string }) {
  return (
    <LinkButton href={href} weight="quiet">
      <ArrowLeft />
      {text}
    </LinkButton>
  );
}
