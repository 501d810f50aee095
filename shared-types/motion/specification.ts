import type { Athlete } from './body.ts';

export const MOVEMENTS = ['wall-throw', 'jump-burpee', 'box-jump-over'] as const;
/** The same words as the standard sheets use. */
export type MovementName = (typeof MOVEMENTS)[number];

export const FAULTS = {
  'wall-throw': ['depth', 'line', 'aim', 'stand', 'bounce'],
  'jump-burpee': ['chest', 'hands', 'over', 'off', 'on', 'creep', 'start'],
  'box-jump-over': ['off', 'on', 'tall', 'touch'],
} as const;
export type FaultCode = (typeof FAULTS)[MovementName][number];
export type MarginUnit = 'cm' | 'ms' | 'degrees';

/** What the sheet fixes: it drives the drawing, the motion and the truth alike. */
export interface SheetNumbers {
  /** Height of the target line above the floor, m. */
  readonly lineHeight: number;
  /** Full width of the target, m; its middle is straight ahead of the athlete. */
  readonly targetWidth: number;
  readonly ballRadius: number;
  /** kg */
  readonly ballMass: number;
  /** How far ahead of the toes the fingertips may be set down, cm. */
  readonly handsAllowance: number;
  /** How far the feet may advance between landing and the next rep, cm. */
  readonly creepAllowance: number;
  /** Largest difference between the two feet that still counts as together, ms. */
  readonly togetherAllowance: number;
  /** Hip or knee flexion that still counts as standing tall, degrees. */
  readonly tallAllowance: number;
  /** Whether the sheet asks for open hips on the box. */
  readonly tallAsked: boolean;
  /** Box: height, depth along the jump, width across, m. */
  readonly boxHeight: number;
  readonly boxDepth: number;
  readonly boxWidth: number;
  /** Within this much of zero the athlete has the benefit of the doubt, in the fault's unit. */
  readonly tolerance: Partial<Readonly<Record<FaultCode, number>>>;
}

/** Common practice, no source; a gym sets its own. */
export const USUAL_NUMBERS: SheetNumbers = {
  lineHeight: 3,
  targetWidth: 0.4,
  ballRadius: 0.17,
  ballMass: 6,
  handsAllowance: 30,
  creepAllowance: 5,
  togetherAllowance: 60,
  tallAllowance: 15,
  tallAsked: true,
  boxHeight: 0.6,
  boxDepth: 0.5,
  boxWidth: 0.75,
  tolerance: {},
};

/** Signed margins asked for: positive while the standard is met; codes left out are met with room. */
export type Margins = Partial<Readonly<Record<FaultCode, number>>>;

export interface RepSpecification {
  readonly movement: MovementName;
  readonly athlete: Athlete;
  readonly sheet: SheetNumbers;
  /** Reps a minute the athlete goes for; physics and anatomy set a floor under the rep's time. */
  readonly cadence: number;
  readonly margins: Margins;
  /** 0 fresh to 1 spent: slower, lower, more bent. */
  readonly fatigue: number;
  /** 0 a metronome, 1 a usual person: how much reps differ from one another. */
  readonly variation: number;
  /** Drives the differences of this rep. */
  readonly seed: number;
  /** Drives the athlete's own style, the same through a stream. */
  readonly styleSeed: number;
  /** True where the rep begins the set: only then is the start line judged. */
  readonly first: boolean;
}

/** A specification with usual values for everything left out. */
export function specify(part: Partial<RepSpecification> & Pick<RepSpecification, 'movement'>): RepSpecification {
  const usualCadence = { 'wall-throw': 24, 'jump-burpee': 15, 'box-jump-over': 16 } as const;
  return {
    athlete: { stature: 1.75, build: 'medium' },
    sheet: USUAL_NUMBERS,
    cadence: usualCadence[part.movement],
    margins: {},
    fatigue: 0,
    variation: 1,
    seed: 1,
    styleSeed: part.seed ?? 1,
    first: true,
    ...part,
  };
}

/** The unit of a fault's margin. */
export function unitOf(movement: MovementName, code: FaultCode): MarginUnit {
  if (code === 'off' || (code === 'on' && movement === 'jump-burpee')) return 'ms';
  return code === 'stand' || code === 'tall' ? 'degrees' : 'cm';
}

/** A part of the body this near to a surface touches it, cm. The margins of `chest`, `on` (box) and `bounce` end here. */
export const CONTACT_ALLOWANCE = 1;
