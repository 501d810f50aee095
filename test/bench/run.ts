// `npm run bench`: speeds as ratios to a named reference measured in the same run. Names after `--` choose some of them.

import { eyeBench } from './eye.ts';
import { foldBench } from './fold.ts';
import { paintBench } from './paint.ts';
import { reviewBench } from './review.ts';
import { tapBench } from './taps.ts';

const benches: Readonly<Record<string, () => string[] | Promise<string[]>>> = {
  eye: eyeBench,
  fold: foldBench,
  taps: tapBench,
  paint: paintBench,
  review: () => reviewBench(),
};

const wanted = process.argv.slice(2);
for (const [name, bench] of Object.entries(benches)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log([`${name}:`, ...(await bench())].join('\n  '));
}
