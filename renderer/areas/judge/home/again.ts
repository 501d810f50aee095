import type { DeskClient } from '../../../link/connection.ts';
import type { SetStart } from '../../../link/store.ts';
import { choiceOf, toSetup } from './choice.ts';
import { newId } from './new-id.ts';

/** The same set once more, under the sheet's present version; rejects with the desk's own refusal. */
export async function startAgain(client: DeskClient, id: string): Promise<SetStart> {
  const [record, sheets] = await Promise.all([client.sets.get({ id }), client.standards.list()]);
  const sheet = sheets.find((item) => item.id === record.setup.sheet.id) ?? record.sheet;
  const setup = toSetup(choiceOf(record.setup), sheet, newId(), Date.now());
  // A stored setup names its people and its sheet, so that none can be missing here.
  if (setup === null) throw new Error('a stored set has no people or no sheet');
  return { setup, sheet, athlete: record.athlete, judge: record.judge };
}
