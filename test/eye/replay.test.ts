import fc from 'fast-check';
import { expect, test } from 'vitest';
import { markOf } from '../../renderer/areas/eye/figure/margin-marks.ts';
import { replayAround, replayTime, tellingFault } from '../../renderer/areas/eye/run/replay.ts';
import { makeRep } from '../../shared-types/motion/rep.ts';
import { FAULTS, type FaultCode, MOVEMENTS, specify, unitOf } from '../../shared-types/motion/specification.ts';
import { truth } from '../../shared-types/motion/truth.ts';
import { drillWith, tasks } from './drills.ts';

test('a replay stays in the rep, stands at its moment, and comes round', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      fc.constantFrom(0.25, 0.5, 1),
      (at, elapsed, speed) => {
        const replay = replayAround(at, 4, speed);
        const t = replayTime(replay, elapsed);
        expect(t).toBeGreaterThanOrEqual(replay.from - 1e-9);
        expect(t).toBeLessThanOrEqual(replay.to + 1e-9);
        const before = (at - replay.from) / speed;
        expect(replayTime(replay, before + 0.1)).toBe(at);
        expect(replayTime(replay, before + replay.hold - 0.1)).toBe(at);
      },
    ),
  );
});

test('the fault that tells: the worst that was broken; else the one named; else the nearest to its line', () => {
  const drill = drillWith(tasks.single);
  const rep = (margins: Partial<Record<FaultCode, number>>) =>
    truth(makeRep(specify({ movement: 'wall-throw', sheet: drill.numbers, margins })), drill.numbers);
  expect(tellingFault(drill, rep({ depth: -9, line: -2 }), [])).toBe('depth');
  expect(tellingFault(drill, rep({ depth: -2, line: -12 }), ['depth'])).toBe('line');
  expect(tellingFault(drill, rep({}), ['aim'])).toBe('aim');
  expect(tellingFault(drill, rep({ depth: 0.4 }), [])).toBe('depth');
});

/** Length of what is drawn thick, in the unit of the margin; null where the margin is no length. */
function drawnLength(
  code: FaultCode,
  spans: readonly (readonly [readonly number[], readonly number[]])[],
): number | null {
  if (code === 'stand' || code === 'tall' || code === 'off') return null;
  const [from = [], to = []] = spans[0] ?? [];
  return 100 * Math.hypot(...from.map((value, i) => value - (to[i] ?? 0)));
}

test('the margin drawn into the picture is the measured one, for every fault of every movement', () => {
  for (const movement of MOVEMENTS) {
    for (const code of FAULTS[movement]) {
      const spec = specify({ movement, margins: { [code]: unitOf(movement, code) === 'cm' ? -6 : -40 } });
      const motion = makeRep(spec);
      const found = truth(motion, spec.sheet);
      const mark = markOf(motion, spec.sheet, code, found);
      const margin = found[code]?.margin ?? Number.NaN;
      expect(mark, `${movement} ${code}`).not.toBe(null);
      expect(mark?.met).toBe(false);
      expect(mark?.t).toBeGreaterThanOrEqual(0);
      expect(mark?.t).toBeLessThanOrEqual(motion.duration);
      const length = drawnLength(code, mark?.spans ?? []);
      if (length === null || unitOf(movement, code) !== 'cm') continue;
      // Contacts are measured from a centimetre of allowance; a foot's hold on the floor is drawn from the floor itself.
      const asked =
        ['chest', 'bounce'].includes(code) || (code === 'on' && movement === 'box-jump-over') ? 1 - margin : -margin;
      if (code === 'creep') expect(length).toBeCloseTo(spec.sheet.creepAllowance - margin, 0);
      else if (code === 'touch') expect(length).toBeLessThan(1);
      else expect(Math.abs(length - asked), `${movement} ${code}: ${length} for ${asked}`).toBeLessThan(0.4);
    }
  }
});
