import { ALIGN_CASES, proveAlignment } from './align-proof.ts';
import { EFFICIENCY_EYES, EYE_CASES, type EyeLine, proveEfficiency, proveEye, timesAsMany } from './drills-proof.ts';
import { markdownTable, percent } from './table.ts';

const SEED = 3_000_000;

function eyeRow(line: EyeLine): string[] {
  const { eye, poorEye, name } = line.case;
  const { strictness, precision, lapse } = poorEye ?? eye;
  return [
    name,
    `${strictness} / ${precision} ${line.unit}, ${percent(lapse, 0)}`,
    line.trials.toFixed(1),
    `${percent(line.strictnessBias)} ± ${(100 * line.biasError).toFixed(1)}`,
    percent(line.strictnessCovered),
    percent(line.precisionBias),
    percent(line.precisionCovered),
    String(line.notTold),
  ];
}

function eyeTable(runs: number): string {
  const rows = EYE_CASES.map((one) => {
    const row = eyeRow(proveEye(one, runs, SEED));
    console.error(row.join('  '));
    return row;
  });
  const head = [
    `drill, ${runs} runs a line`,
    'true strictness / precision, lapses',
    'calls',
    'bias of strictness ± s.e.',
    'covered',
    'bias of precision',
    'covered',
    'not told',
  ];
  return markdownTable(head, rows);
}

function efficiencyTable(runs: number): string {
  const rows = EFFICIENCY_EYES.map((eye) => {
    const line = proveEfficiency(eye, 40, runs, SEED);
    const [even, about] = [timesAsMany(line.even, line.adaptive), timesAsMany(line.about, line.adaptive)];
    return [
      `${eye.strictness} / ${eye.precision} cm`,
      line.adaptive.strictness.toFixed(3),
      line.adaptive.precision.toFixed(3),
      even.strictness.toFixed(2),
      even.precision.toFixed(2),
      about.strictness.toFixed(2),
      about.precision.toFixed(2),
    ];
  });
  const head = [
    `strictness / precision, 40 reps, ${runs} runs`,
    'error of strictness / precision',
    'error of log precision',
    'even stimuli: times the reps',
    'for precision',
    'stimuli about the sheet’s line: times the reps',
    'for precision',
  ];
  return markdownTable(head, rows);
}

function alignTable(sets: number): string {
  const rows = ALIGN_CASES.map(([cycle, lag]) => {
    const line = proveAlignment(cycle, lag, sets, SEED);
    return [`${cycle} s`, `${lag} s`, String(line.reps), percent(line.found, 2), percent(line.right, 2)];
  });
  return markdownTable(['cycle', 'second judge later by', 'reps', 'true pairs found', 'pairs right'], rows);
}

/** The tables of the proof of drills, `runs` simulated drills a line. */
export function drillTables(runs: number): string {
  return [eyeTable(runs), efficiencyTable(Math.ceil(runs / 2)), alignTable(Math.ceil(runs / 2))].join('\n\n');
}
