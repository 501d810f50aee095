import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline';
import openInBrowser from 'open';
import { openDesk } from '../desk/desk.ts';
import { askRunningHost } from './browser/ask-running.ts';
import { PortTaken } from './browser/listen.ts';
import { startBrowserHost } from './browser.ts';
import { hasDisplay } from './find-electron.ts';
import { mendDatabase, mendingAdvice } from './mend.ts';
import type { StartOptions } from './options.ts';
import { entranceCalls } from './pads/entrance.ts';
import { createPads } from './pads.ts';
import type { Places } from './places.ts';

export interface Serving {
  readonly options: StartOptions;
  readonly places: Places;
  readonly screens: () => Promise<string>;
  readonly version: string;
  readonly say: (text: string) => void;
}

/** Serves the program to the user's browser until it is told to end; answers the exit code. */
export async function serve(serving: Serving): Promise<number> {
  const { options, places, say } = serving;
  const running = await askRunningHost(places.remembered);
  if (running !== null) {
    say('Plumbline is already running. A new address for it, good once:');
    show(running, serving);
    return 0;
  }
  const screens = await serving.screens();
  if (options.demo && !existsSync(places.ledger)) say('Preparing the invented gym, once …');
  const opened = await openDesk({
    ledgerPath: places.ledger,
    host: 'browser',
    demo: options.demo,
    version: serving.version,
  });
  if (!opened.ok) {
    const { message, damaged } = opened.problem;
    if (damaged === null) {
      say(message);
      return 1;
    }
    try {
      if (options.mend === null) say(`${message}\n\n${mendingAdvice(damaged)}`);
      else say(`${await mendDatabase(damaged, options.mend)} Start the program again.`);
      return options.mend === null ? 1 : 0;
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
      return 1;
    } finally {
      damaged.close();
    }
  }
  const { desk } = opened;
  if (options.mend !== null) {
    await desk.close();
    say('The database is not damaged; --restore and --start-empty are for damaged ones only. Nothing was changed.');
    return 1;
  }
  const pads = createPads({ router: desk.padRouter, screens, rememberedFile: places.pads });
  try {
    const host = await startBrowserHost({
      router: { ...desk.router, entrance: entranceCalls(pads) },
      screens,
      rememberedFile: places.remembered,
      ...(options.port === null ? {} : { port: options.port }),
    });
    if (host.moved) {
      say(
        'The usual port is taken by another program, so this is a new address. Calls that a page of the old one could ' +
          'not send stay with it until the old port is free.',
      );
    }
    await pads.resume();
    say('Plumbline is running. Open this address in a browser on this computer; it is good once:');
    show(host.newAddress(), serving);
    await untilToldToEnd(() => show(host.newAddress(), { ...serving, options: { ...options, open: false } }), say);
    await host.close();
    return 0;
  } catch (error) {
    if (!(error instanceof PortTaken)) throw error;
    say(error.message);
    return 1;
  } finally {
    await pads.close();
    await desk.close();
  }
}

function show(address: string, { options, say }: Serving): void {
  say(`\n  ${address}\n`);
  if (!options.open || !hasDisplay(process.platform, process.env)) return;
  // Where there is no browser to open, the printed address is what remains.
  openInBrowser(address).then(
    (child) => child.once('error', () => {}),
    () => {},
  );
}

/** Resolves on Ctrl-C or a request to end; Enter asks for a new address. A second Ctrl-C ends at once. */
function untilToldToEnd(onEnter: () => void, say: (text: string) => void): Promise<void> {
  return new Promise((resolve) => {
    const lines = process.stdin.isTTY ? createInterface({ input: process.stdin }) : null;
    lines?.on('line', onEnter);
    say(lines === null ? 'It ends with Ctrl-C.' : 'Enter gives a new address, Ctrl-C ends the program.');
    let told = false;
    const end = (): void => {
      if (told) process.exit(130);
      told = true;
      lines?.close();
      resolve();
    };
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
  });
}
