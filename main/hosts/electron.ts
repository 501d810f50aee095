// The entry of the desktop program. Everything that can be tested without Electron is elsewhere.

import { app, dialog } from 'electron';
import { runProgram } from './electron/run.ts';
import { problemCode } from './exit-code.ts';

// Packed, the program is argv[0]; started from its source, Electron is that and this file the first argument.
const args = process.argv.slice(app.isPackaged ? 1 : 2);

runProgram(args).catch((error: unknown) => {
  dialog.showErrorBox('Plumbline could not start', error instanceof Error ? error.message : String(error));
  app.exit(problemCode);
});
