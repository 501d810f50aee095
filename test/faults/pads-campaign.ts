import 'fake-indexeddb/auto';
import { type ChildProcess, fork } from 'node:child_process';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { openLedger } from '../../main/ledger/open.ts';
import { refKey, type SetEvent } from '../../shared-types/log/events.ts';
import { mixSeed, type Random, random } from '../../shared-types/motion/random.ts';
import { plantFolder } from '../hosts/browser-fixture.ts';
import { until } from '../link/drafts.ts';
import { freePort, sendCode } from '../pads/pads-fixture.ts';
import { type BadLine, badLine } from './bad-line.ts';
import type { FromHost, ToHost } from './pads-host.ts';
import { type SimulatedPad, simulatePad } from './simulated-pad.ts';

export interface CampaignOptions {
  readonly seconds: number;
  readonly pads: number;
  /** Calls a second on each pad. */
  readonly rate: number;
  /** The desk is killed and started again about this often, milliseconds. */
  readonly killEveryMs: number;
  /** A pad's page lives about this long, milliseconds. */
  readonly reloadAfterMs: number;
  readonly seed: number;
  readonly say?: (line: string) => void;
}

/** What was done and what came of it; the five last must be 0. */
export interface CampaignOutcome {
  readonly shown: number;
  readonly acknowledged: number;
  readonly kills: number;
  readonly reloads: number;
  readonly cuts: number;
  readonly twice: number;
  readonly late: number;
  /** Largest error of an aligned clock, milliseconds. */
  readonly worstClockMs: number;
  /** Shown by a pad and not in the log, or there with other contents. */
  readonly missing: number;
  /** Acknowledged and not in the log after the last kill. */
  readonly lost: number;
  /** In the log more than once, or never shown by any pad. */
  readonly tooMany: number;
  /** Events of one page load recorded in another order than they were tapped. */
  readonly outOfOrder: number;
  /** Set aside by a pad, and clocks farther off than they said. */
  readonly wrong: number;
}

/** The desk in a process of its own, which can be killed and started again on the same database. */
interface Host {
  readonly ask: (message: ToHost) => Promise<FromHost>;
  /** SIGKILL, and a new start. */
  readonly kill: () => Promise<void>;
  /** SIGKILL for good. */
  readonly end: () => Promise<void>;
}

async function startHost(args: readonly string[]): Promise<Host> {
  let child: ChildProcess;
  let heard: (message: FromHost) => void = () => {};
  const begin = async (): Promise<void> => {
    child = fork(path.join(import.meta.dirname, 'pads-host.ts'), args, {
      execArgv: [],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    const ready = new Promise<FromHost>((resolve, reject) => {
      heard = resolve;
      child.once('exit', (code) => reject(new Error(`the desk did not start (${code})`)));
    });
    child.on('message', (message) => heard(message as FromHost));
    child.once('exit', (code, signal) => {
      if (signal !== 'SIGKILL') console.error(`the desk ended by itself: ${code ?? signal}`);
    });
    await ready;
  };
  const ask = (message: ToHost): Promise<FromHost> =>
    new Promise((resolve) => {
      heard = resolve;
      child.send(message);
    });
  const end = async (): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGKILL');
    await ended;
  };
  await begin();
  return {
    ask,
    end,
    kill: async () => {
      await end();
      await begin();
    },
  };
}

/** Runs pads against a desk through a bad line, kills and reloads included, and compares the log with what was shown. */
export async function runCampaign(options: CampaignOptions): Promise<CampaignOutcome> {
  const chance = random(options.seed);
  const { folder, screens } = plantFolder();
  const ledgerPath = path.join(folder, 'plumbline.db');
  const sets: string[] = [];
  const host = await startHost([ledgerPath, screens, path.join(folder, 'pads.json'), String(options.pads)]);
  const pads: SimulatedPad[] = [];
  let line: BadLine | null = null;
  try {
    const port = await freePort();
    await host.ask({ say: 'open', port });
    const badness = { twice: 0.05, late: 0.2, longestLateMs: 120, cutAfterMs: 4_000 };
    line = await badLine(() => port, badness, random(mixSeed(options.seed, 2)));
    for (let pad = 1; pad <= options.pads; pad += 1) {
      pads.push(await joinPad(host, sets, port, line.port, pad, options));
    }
    const kills = await judgeFor(options, host, chance);
    line.mend();
    for (const pad of pads) await pad.stop();
    await until(() => pads.every((pad) => pad.unsent() === 0), 60_000);
    const clocks = pads.map((pad) => pad.clockError()).filter((error) => error !== null);
    const aside = pads.reduce((sum, pad) => sum + pad.aside(), 0);
    for (const pad of pads) pad.close();
    // The last word has the disk, not the process.
    await host.end();
    const { cuts, twice, late } = line.done;
    return {
      ...(await compare(ledgerPath, sets, pads)),
      kills,
      reloads: pads.reduce((sum, pad) => sum + pad.reloads(), 0),
      cuts,
      twice,
      late,
      worstClockMs: Math.max(0, ...clocks.map(({ off }) => off)),
      // Both clocks are read in whole milliseconds.
      wrong: aside + clocks.filter(({ off, uncertaintyMs }) => off > uncertaintyMs + 2).length,
    };
  } finally {
    for (const pad of pads) pad.close();
    await line?.close();
    await host.end().catch(() => {});
    rmSync(folder, { recursive: true, force: true });
  }
}

async function joinPad(
  host: Host,
  sets: string[],
  port: number,
  linePort: number,
  number: number,
  options: CampaignOptions,
): Promise<SimulatedPad> {
  const made = await host.ask({ say: 'code' });
  if (made.told !== 'code') throw new Error(`asked for a code, told ${made.told}`);
  const answer = await sendCode({ port, base: made.path }, made.code);
  const [cookie = ''] = String(answer.headers['set-cookie']).split(';');
  const lane = String(number);
  const put = await host.ask({ say: 'put', device: JSON.parse(answer.text).device, lane });
  if (put.told !== 'put' || put.set === '') throw new Error('the lane has no set');
  sets.push(put.set);
  const place = {
    linePort,
    host: `127.0.0.1:${port}`,
    path: made.path,
    cookie,
    set: put.set,
    name: `pad ${number}`,
  };
  return simulatePad(place, options.rate, options.reloadAfterMs, random(mixSeed(options.seed, 100 + number)));
}

/** Lets them judge, killing the desk now and then; how often it was killed. */
async function judgeFor(options: CampaignOptions, host: Host, chance: Random): Promise<number> {
  const end = performance.now() + options.seconds * 1_000;
  let kills = 0;
  let told = performance.now();
  while (performance.now() < end) {
    const wait = Math.min(chance.between(0.5, 1.5) * options.killEveryMs, end - performance.now());
    await new Promise((resolve) => setTimeout(resolve, wait));
    await host.kill();
    kills += 1;
    if (performance.now() - told < 30_000) continue;
    told = performance.now();
    options.say?.(`${Math.round((end - told) / 1_000)} s left, the desk was killed ${kills} times`);
  }
  return kills;
}

async function compare(ledgerPath: string, sets: readonly string[], pads: readonly SimulatedPad[]) {
  const opened = await openLedger(ledgerPath);
  if (opened.state !== 'open') throw new Error(`the database is damaged: ${opened.problems.join('; ')}`);
  const recorded = sets.flatMap((set) => opened.ledger.log.events(set));
  opened.ledger.close();
  const shown = pads.flatMap((pad) => pad.shown);
  const byKey = new Map(recorded.map((event) => [refKey(event), JSON.stringify(sorted(event))]));
  const known = new Set(shown.map(refKey));
  const acknowledged = pads.flatMap((pad) => [...pad.acknowledged]);
  let outOfOrder = 0;
  const last = new Map<string, number>();
  for (const { pad, seq } of recorded) {
    if (seq < (last.get(pad) ?? 0)) outOfOrder += 1;
    last.set(pad, seq);
  }
  return {
    shown: shown.length,
    acknowledged: acknowledged.length,
    missing: shown.filter((event) => byKey.get(refKey(event)) !== JSON.stringify(sorted(event))).length,
    lost: acknowledged.filter((key) => !byKey.has(key)).length,
    tooMany: recorded.length - byKey.size + [...byKey.keys()].filter((key) => !known.has(key)).length,
    outOfOrder,
  };
}

function sorted(event: SetEvent): [string, unknown][] {
  return Object.entries(event).toSorted(([one], [other]) => (one < other ? -1 : 1));
}
