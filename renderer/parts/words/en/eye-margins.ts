import type { FaultCode, MarginUnit, MovementName } from '../../../../shared-types/motion/specification.ts';
import type { Formats } from '../formats.ts';

interface Says {
  /** The standard is met by this much. */
  readonly met: (much: string) => string;
  readonly broken: (much: string) => string;
  /** What a lenient eye lets through, of this size and less. */
  readonly lets: (much: string) => string;
  /** What a strict eye takes away, good by this much and less. */
  readonly takes: (much: string) => string;
}

const joiner = '\u00a0';

/** A margin in words: of the measured truth, and of what an eye lets through or takes away. */
export function eyeMarginWords({ number }: Formats) {
  const amount = (value: number, unit: MarginUnit): string => {
    const size = Math.abs(value);
    if (unit === 'degrees') return `${number(size, size < 10 ? 1 : 0)}°`;
    return `${number(size, unit === 'cm' && size < 20 ? 1 : 0)}${joiner}${unit}`;
  };
  const feet = (deed: string, noun: string): Says => ({
    met: (much) => `feet ${deed} together, ${much} inside what is allowed`,
    broken: (much) => `feet ${deed} ${much} too far apart in time`,
    lets: (much) => `${noun} with the feet up to ${much} too far apart in time`,
    takes: (much) => `${noun} that are together with up to ${much} to spare`,
  });
  const tall: Says = {
    met: (much) => `tall, ${much} inside what is allowed`,
    broken: (much) => `${much} too bent`,
    lets: (much) => `hips up to ${much} too bent`,
    takes: (much) => `hips that are open with up to ${much} to spare`,
  };
  const says: Record<FaultCode, Says> = {
    depth: {
      met: (much) => `hip ${much} below the knee`,
      broken: (much) => `hip ${much} too high`,
      lets: (much) => `squats up to ${much} too high`,
      takes: (much) => `squats that are deep enough by up to ${much}`,
    },
    line: {
      met: (much) => `ball ${much} above the line`,
      broken: (much) => `ball ${much} below the line`,
      lets: (much) => `balls up to ${much} below the line`,
      takes: (much) => `balls up to ${much} above the line`,
    },
    aim: {
      met: (much) => `ball ${much} inside the target`,
      broken: (much) => `ball ${much} beside the target`,
      lets: (much) => `balls up to ${much} beside the target`,
      takes: (much) => `balls up to ${much} inside the target`,
    },
    stand: tall,
    tall,
    bounce: {
      met: () => 'ball at rest when taken',
      broken: (much) => `ball taken ${much} off the floor`,
      lets: (much) => `balls taken up to ${much} off the floor`,
      takes: (much) => `balls that are at rest, within ${much}`,
    },
    chest: {
      met: () => 'chest on the floor',
      broken: (much) => `chest ${much} short of the floor`,
      lets: (much) => `chests up to ${much} off the floor`,
      takes: (much) => `chests that touch, within ${much}`,
    },
    hands: {
      met: (much) => `hands ${much} inside what is allowed`,
      broken: (much) => `hands ${much} too far ahead`,
      lets: (much) => `hands up to ${much} too far ahead`,
      takes: (much) => `hands that are up to ${much} inside what is allowed`,
    },
    over: {
      met: (much) => `feet ${much} behind the hands`,
      broken: (much) => `feet ${much} past the hands`,
      lets: (much) => `feet up to ${much} past the hands`,
      takes: (much) => `feet that stay up to ${much} behind the hands`,
    },
    off: feet('left', 'take-offs'),
    on: feet('landed', 'landings'),
    creep: {
      met: (much) => `feet ${much} inside what is allowed`,
      broken: (much) => `feet crept ${much} too far`,
      lets: (much) => `feet that creep up to ${much} too far`,
      takes: (much) => `feet that are up to ${much} inside what is allowed`,
    },
    start: {
      met: (much) => `toes ${much} behind the line`,
      broken: (much) => `toes ${much} over the line`,
      lets: (much) => `toes up to ${much} over the line`,
      takes: (much) => `toes that stay up to ${much} behind the line`,
    },
    touch: {
      met: (much) => `hands ${much} clear of the box`,
      broken: (much) => `hand on the box, ${much} in from its edge`,
      lets: (much) => `hands up to ${much} onto the box`,
      takes: (much) => `hands up to ${much} clear of the box`,
    },
  };
  const onBox: Says = {
    met: () => 'both feet on the box',
    broken: (much) => `one foot ${much} above the box`,
    lets: (much) => `feet up to ${much} above the box`,
    takes: (much) => `feet that stand on the box, within ${much}`,
  };
  const of = (movement: MovementName, code: FaultCode): Says =>
    code === 'on' && movement === 'box-jump-over' ? onBox : says[code];
  return {
    amount,
    /** From one size to another: "2.0 to 4.4 cm". */
    span: (low: number, high: number, unit: MarginUnit) =>
      `${number(low, unit === 'ms' || high >= 20 ? 0 : 1)} to ${amount(high, unit)}`,
    /** A measured margin, signed, positive while the standard is met. */
    measured: (movement: MovementName, code: FaultCode, margin: number, unit: MarginUnit) => {
      const { met, broken } = of(movement, code);
      return (margin >= 0 ? met : broken)(amount(margin, unit));
    },
    lets: (movement: MovementName, code: FaultCode, by: number, unit: MarginUnit) =>
      of(movement, code).lets(amount(by, unit)),
    takes: (movement: MovementName, code: FaultCode, by: number, unit: MarginUnit) =>
      of(movement, code).takes(amount(by, unit)),
  };
}
