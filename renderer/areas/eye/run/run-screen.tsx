import { useEffect, useState } from 'react';
import type { DrillRecord } from '../../../../shared-types/contract/drills.ts';
import { calledName } from '../../../../shared-types/people.ts';
import { Loaded } from '../../../parts/controls/loaded.tsx';
import { useLink } from '../../../parts/desk/link.ts';
import { newId } from '../../../parts/desk/new-id.ts';
import { useCall } from '../../../parts/desk/use-call.ts';
import { useFloor } from '../../../parts/shell/floor.tsx';
import { useWords } from '../../../parts/words/words.tsx';
import { exposeToTests } from '../test-hook.ts';
import { appendTo, openDrillLog } from './drill-log.ts';
import { DrillRun } from './drill-run.ts';
import { RunView } from './run-view.tsx';

/** A drill that is to be done, or gone on with. */
export function RunScreen({ id }: { id: string }) {
  useFloor();
  const record = useCall(`drill ${id}`, (client, signal) => client.drills.get({ id }, { signal }));
  return <Loaded reading={record}>{(data) => <Running key={data.drill.id} record={data} />}</Loaded>;
}

function Running({ record }: { record: DrillRecord }) {
  const words = useWords();
  const link = useLink();
  // One log and one run for as long as the screen stands, whatever is read anew meanwhile.
  const [run] = useState(
    () => new DrillRun(openDrillLog(record.drill, record.events, `eye-${newId()}`, appendTo(link.client))),
  );
  useEffect(() => exposeToTests(run), [run]);
  useEffect(() => {
    document.title = `${words.eye.kinds[record.drill.task.kind]} – ${words.shell.product}`;
  }, [record, words]);
  return <RunView run={run} sheet={record.sheet} judge={calledName(record.judge)} />;
}
