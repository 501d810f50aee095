// `npm run faults -- --minutes N`: pads at work through a bad line, their pages reloaded and the desk killed, for as long
// as wanted. Prints what was done and what came of it; ends with 1 where a call is missing, doubled or out of order.

import { parseArgs } from 'node:util';
import { runCampaign } from './pads-campaign.ts';

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '1' },
    pads: { type: 'string', default: '32' },
    rate: { type: 'string', default: '1.5' },
    seed: { type: 'string', default: String(Date.now() % 100_000) },
  },
});
const [minutes, pads, rate, seed] = [values.minutes, values.pads, values.rate, values.seed].map(Number);
if (![minutes, pads, rate, seed].every((value) => Number.isFinite(value) && Number(value) >= 0)) {
  throw new Error('--minutes, --pads, --rate and --seed take numbers');
}
const options = {
  seconds: (minutes ?? 1) * 60,
  // A night has 32 lanes at most.
  pads: Math.min(32, Math.max(1, Math.round(pads ?? 32))),
  rate: rate ?? 1.5,
  killEveryMs: 6_000,
  reloadAfterMs: 10_000,
  seed: seed ?? 1,
  say: console.log,
};
console.log(`${options.pads} pads, ${options.rate} calls a second each, ${options.seconds} s, seed ${options.seed}`);
const outcome = await runCampaign(options);
for (const [what, value] of Object.entries(outcome)) console.log(`${what.padEnd(14)} ${Math.round(value)}`);
const faults = outcome.missing + outcome.lost + outcome.tooMany + outcome.outOfOrder + outcome.wrong;
console.log(faults === 0 ? 'Every call is there, once and in order.' : 'FAILED');
process.exit(faults === 0 ? 0 : 1);
