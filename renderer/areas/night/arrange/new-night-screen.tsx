import type { Person } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../../parts/controls/button.tsx';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { useCall } from '../../../parts/desk/use-call.ts';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { NightForm } from './night-form.tsx';

export interface Known {
  readonly people: readonly Person[];
  readonly sheets: readonly StandardSheet[];
}

export function NewNightScreen() {
  const words = useWords().night;
  const { compare } = useFormats();
  const known = useCall(
    'people and sheets for a night',
    async (client, signal): Promise<Known> => {
      const [lines, sheets] = await Promise.all([
        client.people.list({ archived: false }, { signal }),
        client.standards.list(undefined, { signal }),
      ]);
      return {
        people: lines.map(({ person }) => person).toSorted((one, other) => compare(one.name, other.name)),
        sheets: sheets.toSorted((one, other) => compare(one.station, other.station)),
      };
    },
    { topics: ['people', 'standards'] },
  );
  return (
    <Page
      title={words.newTitle}
      help={words.formHelp}
      above={
        <LinkButton href="/" weight="quiet">
          <ArrowLeft />
          {words.back}
        </LinkButton>
      }
    >
      <Loaded reading={known}>{(data) => <NightForm known={data} />}</Loaded>
    </Page>
  );
}
