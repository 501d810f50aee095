import type { NightRecord } from '../../../../shared-types/contract/nights.ts';
import type { NightEntry } from '../../../../shared-types/night/events.ts';
import { begunHeats, foldNight, planOf } from '../../../../shared-types/night/fold.ts';
import type { NightPlan } from '../../../../shared-types/night/night.ts';
import { type Roster, rosterOf } from '../../../../shared-types/night/roster.ts';
import { checkPlan } from '../../../../shared-types/night/rules.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { Button, LinkButton } from '../../../parts/controls/button.tsx';
import { EmptyState } from '../../../parts/controls/card.tsx';
import { FailureNote, Loaded } from '../../../parts/controls/loaded.tsx';
import { saveFile } from '../../../parts/controls/save-file.ts';
import { startOfDay } from '../../../parts/controls/start-of-day.ts';
import { useAction } from '../../../parts/desk/use-action.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { ArrowLeft } from '../../../parts/look/signs.tsx';
import { useNotices } from '../../../parts/shell/notices.tsx';
import { Page } from '../../../parts/shell/page.tsx';
import { useFormats, useWords } from '../../../parts/words/words.tsx';
import { BreachList } from './breach-list.tsx';
import { PlanMaker } from './plan-maker.tsx';
import { PlanTable } from './plan-table.tsx';
import { PresenceList } from './presence-list.tsx';

/** One night: its plan, made and changed. */
export function NightScreen({ id }: { id: string }) {
  const words = useWords().night;
  const common = useWords().common;
  const { date } = useFormats();
  const { tell } = useNotices();
  const record = useCall(`night ${id}`, (client, signal) => client.nights.get({ id }, { signal }), {
    topics: ['nights', 'people'],
  });
  const fetchFile = useAction((client) => client.nights.export({ id, format: 'json' }));
  const night = record.data?.night;
  const day = night === undefined ? null : startOfDay(night.date);
  const save = async (): Promise<void> => {
    const file = await fetchFile.run();
    if (file === undefined) return;
    saveFile(file);
    tell(words.plan.exported(file.fileName));
  };
  return (
    <Page
      title={night === undefined ? words.title : night.name}
      intro={day === null ? undefined : date(day)}
      help={words.plan.help}
      above={
        <LinkButton href="/" weight="quiet">
          <ArrowLeft />
          {words.back}
        </LinkButton>
      }
      actions={
        night === undefined ? null : (
          <>
            <LinkButton href={`/${id}/change`}>{words.change}</LinkButton>
            <Button onClick={() => window.print()}>{common.print}</Button>
            <Button busy={fetchFile.busy} onClick={() => void save()}>
              {words.plan.export}
            </Button>
          </>
        )
      }
    >
      {fetchFile.failure === undefined ? null : <FailureNote failure={fetchFile.failure} />}
      <Loaded reading={record}>{(data) => <Night record={data} />}</Loaded>
    </Page>
  );
}

/** A night as its screen's parts need it. */
export interface Shown {
  readonly record: NightRecord;
  readonly roster: Roster;
  readonly plan: NightPlan;
  /** Heats that have begun and are not changed any more. */
  readonly begun: number;
  readonly nameOf: (person: string) => string;
  /** Writes to the night's log; false where the desk refused. */
  readonly write: (entry: NightEntry) => Promise<boolean>;
}

function Night({ record }: { record: NightRecord }) {
  const words = useWords().night;
  const common = useWords().common;
  const append = useAction((client, input: { id: string; entry: NightEntry }) => client.nights.append(input));
  const state = foldNight(record.night.id, record.events);
  const roster = rosterOf(state);
  if (roster === null) return <EmptyState title={words.missing} />;
  const names = new Map(record.people.map((person) => [person.id, calledName(person)]));
  const nameOf = (person: string): string => names.get(person) ?? '?';
  const plan = planOf(state);
  const breaches = checkPlan(roster, plan, nameOf);
  const write = async (entry: NightEntry): Promise<boolean> =>
    (await append.run({ id: record.night.id, entry })) !== undefined;
  const shown: Shown = { record, roster, plan, begun: begunHeats(state), nameOf, write };
  return (
    <>
      <PlanMaker shown={shown} />
      {append.failure === undefined ? null : <FailureNote failure={append.failure} deed={common.saveFailed} />}
      {plan.length === 0 ? (
        <EmptyState title={words.plan.emptyTitle} text={words.plan.emptyText} />
      ) : (
        <>
          <BreachList breaches={breaches} />
          <PlanTable shown={shown} breaches={breaches} />
        </>
      )}
      <PresenceList shown={shown} presence={state.presence} />
    </>
  );
}
