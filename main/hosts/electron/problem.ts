import { dialog } from 'electron';
import type { DeskProblem } from '../../desk/desk.ts';
import { type Damaged, mendDatabase } from '../mend.ts';
import type { Mend } from '../options.ts';

/**
 * Tells the user why the database does not open. For a damaged one it offers what can be done, and does it only when it is
 * chosen; true where the database should be tried again.
 */
export async function tellProblem(problem: DeskProblem): Promise<boolean> {
  if (problem.damaged === null) {
    dialog.showErrorBox('Plumbline cannot open its database', problem.message);
    return false;
  }
  try {
    return await offerMending(problem.message, problem.damaged);
  } catch (error) {
    dialog.showErrorBox('The database could not be mended', error instanceof Error ? error.message : String(error));
    return false;
  } finally {
    problem.damaged.close();
  }
}

async function offerMending(message: string, damaged: Damaged): Promise<boolean> {
  const choices: { label: string; mend: Mend | null }[] = [{ label: 'Change nothing and close', mend: null }];
  if (damaged.lastGood !== null) {
    choices.push({ label: 'Restore the last good copy', mend: { kind: 'restore', copy: null } });
  }
  choices.push({ label: 'Begin an empty database', mend: { kind: 'start-empty' } });
  const { response } = await dialog.showMessageBox({
    type: 'warning',
    title: 'Plumbline',
    message: 'The database is damaged.',
    detail: `${message}\n\nWhatever you choose, the damaged file is renamed and kept.`,
    buttons: choices.map((choice) => choice.label),
    defaultId: 0,
    cancelId: 0,
    noLink: true,
  });
  const mend = choices[response]?.mend ?? null;
  if (mend === null) return false;
  const told = await mendDatabase(damaged, mend);
  await dialog.showMessageBox({ type: 'info', title: 'Plumbline', message: told, buttons: ['Go on'] });
  return true;
}
