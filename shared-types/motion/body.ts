/**
 * Heights and lengths as fractions of stature: Winter DA (2009), Biomechanics and Motor Control of Human Movement,
 * 4th ed., Figure 4.1, after Drillis R & Contini R (1966), Body Segment Parameters, Report 1166-03, New York.
 * @internal exported for the test against the published table
 */
export const FRACTIONS = {
  ankleHeight: 0.039,
  kneeHeight: 0.285,
  hipHeight: 0.53,
  shoulderHeight: 0.818,
  chinHeight: 0.87,
  eyeHeight: 0.936,
  headLength: 0.13,
  shoulderHalfWidth: 0.129,
  hipHalfWidth: 0.0955,
  upperArm: 0.186,
  forearm: 0.146,
  hand: 0.108,
  thigh: 0.245,
  shank: 0.246,
  footLength: 0.152,
  footBreadth: 0.055,
} as const;

/**
 * Share of body mass and place of each segment's centre from its proximal end: Winter (2005), Table 4.1, after Dempster
 * (1955). Head and neck is taken to the middle of the head, the trunk from mid-hips to mid-shoulders.
 */
export const MASSES = {
  hand: { share: 0.006, centre: 0.506 },
  forearm: { share: 0.016, centre: 0.43 },
  upperArm: { share: 0.028, centre: 0.436 },
  foot: { share: 0.0145, centre: 0.5 },
  shank: { share: 0.0465, centre: 0.433 },
  thigh: { share: 0.1, centre: 0.433 },
  headAndNeck: { share: 0.081, centre: 1 },
  trunk: { share: 0.497, centre: 0.5 },
} as const;

export const BUILDS = ['slim', 'medium', 'sturdy'] as const;
export type Build = (typeof BUILDS)[number];

export interface Athlete {
  /** Metres, 1.40 to 2.10. */
  readonly stature: number;
  readonly build: Build;
}

/** Body mass in kilograms for the build: body mass index 21, 24, 28 (our own choice). */
const MASS_INDEX: Readonly<Record<Build, number>> = { slim: 21, medium: 24, sturdy: 28 };
const FLESH: Readonly<Record<Build, number>> = { slim: 0.88, medium: 1, sturdy: 1.14 };

/** Every length of one athlete, metres, and mass in kilograms. */
export interface Body {
  readonly stature: number;
  readonly mass: number;
  readonly thigh: number;
  readonly shank: number;
  readonly ankleHeight: number;
  readonly footLength: number;
  /** Along the sole: heel to the balls of the toes, and ankle to the balls of the toes. */
  readonly heelToForefoot: number;
  readonly ankleToForefoot: number;
  readonly toes: number;
  /** Mid-hips to a hip joint's centre; the trochanters of the table lie farther out. */
  readonly hipJoint: number;
  readonly shoulderHalf: number;
  /** The trunk of the table, cut in two so that the back can bend. */
  readonly lowerTrunk: number;
  readonly upperTrunk: number;
  readonly neck: number;
  readonly head: number;
  readonly upperArm: number;
  readonly forearm: number;
  readonly hand: number;
  readonly flesh: Flesh;
}

/** Half thicknesses of the flesh, metres: for drawing, for contact with floor and box. Our own proportions. */
export interface Flesh {
  readonly head: number;
  readonly neck: number;
  readonly chestDepth: number;
  readonly chestWidth: number;
  readonly pelvisDepth: number;
  readonly pelvisWidth: number;
  readonly upperArm: number;
  readonly elbow: number;
  readonly wrist: number;
  readonly hand: number;
  readonly thigh: number;
  readonly knee: number;
  readonly calf: number;
  readonly ankle: number;
  /** From the hip joint to the fold between thigh and trunk, on the front of the thigh. */
  readonly hipCrease: number;
  /** From the knee joint to the top of the bent knee. */
  readonly kneeTop: number;
}

/** The lengths of one athlete. @param athlete stature in metres and build */
export function bodyOf(athlete: Athlete): Body {
  const H = athlete.stature;
  const f = FRACTIONS;
  const foot = f.footLength * H;
  const trunk = (f.shoulderHeight - f.hipHeight) * H;
  const k = FLESH[athlete.build] * H;
  return {
    stature: H,
    mass: MASS_INDEX[athlete.build] * H * H,
    thigh: f.thigh * H,
    shank: f.shank * H,
    ankleHeight: f.ankleHeight * H,
    footLength: foot,
    // The balls of the toes at 72 % of the foot, the ankle at 25 % (from memory, as in common foot models).
    heelToForefoot: 0.72 * foot,
    ankleToForefoot: 0.47 * foot,
    toes: 0.28 * foot,
    hipJoint: 0.05 * H,
    shoulderHalf: f.shoulderHalfWidth * H,
    lowerTrunk: 0.375 * trunk,
    upperTrunk: 0.625 * trunk,
    neck: (f.chinHeight - f.shoulderHeight) * H,
    head: f.headLength * H,
    upperArm: f.upperArm * H,
    forearm: f.forearm * H,
    hand: f.hand * H,
    flesh: {
      head: 0.052 * H,
      neck: 0.033 * k,
      chestDepth: 0.064 * k,
      chestWidth: 0.098 * k,
      pelvisDepth: 0.06 * k,
      pelvisWidth: 0.092 * k,
      upperArm: 0.03 * k,
      elbow: 0.024 * k,
      wrist: 0.017 * k,
      hand: 0.013 * H,
      thigh: 0.05 * k,
      knee: 0.034 * k,
      calf: 0.032 * k,
      ankle: 0.022 * k,
      hipCrease: 0.04 * k,
      kneeTop: 0.033 * k,
    },
  };
}
