import type { NightRecord } from '../../../../shared-types/contract/nights.ts';
import { foldNight } from '../../../../shared-types/night/fold.ts';
import type { Person } from '../../../../shared-types/people.ts';
import type { StandardSheet } from '../../../../shared-types/sheets/sheet.ts';
import { LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
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

function useKnown() {
  const { compare } = useFormats();
  return useCall(
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
}

export function NewNightScreen() {
  const words = useWords().night;
  const known = useKnown();
  return (
    <Page title={words.newTitle} help={words.formHelp} above={<Back href="/" text={words.back} />}>
      <Loaded reading={known}>{(data) => <NightForm known={data} held={null} />}</Loaded>
    </Page>
  );
}

/** What is arranged of a night, changed: somebody more, a lane less. The plan itself stays until it is made again. */
export function ChangeNightScreen({ id }: { id: string }) {
  const words = useWords().night;
  const known = useKnown();
  const record = useCall(`night ${id}`, (client, signal) => client.nights.get({ id }, { signal }));
  const night = record.data?.night;
  return (
    <Page
      title={night === undefined ? words.changeTitle : words.changeTitleOf(night.name)}
      help={words.changeHelp}
      above={<Back href={`/${id}`} text={words.backToNight} />}
    >
      <Loaded reading={record}>
        {(data) => <Loaded reading={known}>{(all) => <Change record={data} known={all} />}</Loaded>}
      </Loaded>
    </Page>
  );
}

function Change({ record, known }: { record: NightRecord; known: Known }) {
  const words = useWords().night;
  const { arrangement } = foldNight(record.night.id, record.events);
  if (arrangement === null) return <EmptyState title={words.missing} />;
  // Whoever has been archived since still belongs to the night.
  const archived = record.people.filter(({ id }) => known.people.every((person) => person.id !== id));
  const people = [...known.people, ...archived];
  return <NightForm known={{ ...known, people }} held={{ night: record.night, arrangement }} />;
}

function Back({ href, text }: { href: string; text: string }) {
  return (
    <LinkButton href={href} weight="quiet">
      <ArrowLeft />
      {text}
    </LinkButton>
  );
}
