import type { Body } from '../../../../shared-types/motion/body.ts';
import type { Pose } from '../../../../shared-types/motion/pose.ts';
import {
  acrossTo,
  along,
  cross,
  mix,
  scale,
  subtract,
  unit,
  type Vec3,
} from '../../../../shared-types/motion/vector.ts';
import type { Appearance } from './palette.ts';
import { between, type Section, Skin } from './skin.ts';

/** Places along the trunk: 0 the hips, 1 the waist, 2 the base of the neck. */
const LAST_SHORTS = 0.86;
const RINGS = 20;
const FIRST = -0.46;
const LAST = 2.16;

/** The trunk from crotch to neck, one skin that bends at the waist. */
export class Trunk {
  readonly skin = new Skin(RINGS + 2, 22);
  private readonly body: Body;
  private readonly places: readonly number[];
  private readonly sections: readonly Section[];

  constructor(body: Body, look: Appearance) {
    this.body = body;
    const even = Array.from({ length: RINGS }, (_, i) => FIRST + ((LAST - FIRST) * i) / (RINGS - 1));
    this.places = [...even, LAST_SHORTS, LAST_SHORTS + 1e-3].toSorted((one, other) => one - other);
    const f = body.flesh;
    const [pw, pd] = [f.pelvisWidth * look.hips, f.pelvisDepth];
    const [cw, cd] = [f.chestWidth * look.shoulders, f.chestDepth];
    this.sections = [
      [FIRST, 0.02 * pw, 0.02 * pd, 0],
      [-0.38, 0.4 * pw, 0.6 * pd, -0.02 * pd],
      [-0.2, 0.86 * pw, 1.05 * pd, -0.16 * pd],
      [0.05, 1.02 * pw, 1.2 * pd, -0.24 * pd],
      [0.35, 1.0 * pw, 1.14 * pd, -0.18 * pd],
      [0.8, 0.9 * pw, 0.98 * pd, 0],
      [1.1, 0.88 * cw, 0.88 * cd, 0.02 * cd],
      [1.35, 0.98 * cw, 0.97 * cd, 0],
      // The breastbone stands where the measure of the chest takes it to be: a half depth ahead of the spine's line.
      [1.6, 1.1 * cw, cd, 0],
      [1.8, 1.14 * cw, 0.93 * cd, -0.04 * cd],
      [1.93, 0.95 * cw, 0.74 * cd, -0.12 * cd],
      [2.03, 1.5 * f.neck, 1.2 * f.neck, -0.12 * cd],
      [2.12, 1.02 * f.neck, 1.0 * f.neck, -0.05 * cd],
      [LAST, 0.9 * f.neck, 0.9 * f.neck, 0],
    ];
    const collar = look.sleeves ? 2.02 : 1.96;
    for (const [i, place] of this.places.entries()) {
      this.skin.paint(i, place <= LAST_SHORTS ? look.shorts : place < collar ? look.top : look.skin);
    }
  }

  follow(pose: Pose): void {
    const { pelvis, waist, neckBase, frames } = pose;
    const low = mix(pelvis, waist, 0.45);
    const high = mix(waist, neckBase, 0.35);
    for (const [i, place] of this.places.entries()) {
      const { width, depth, ahead } = between(this.sections, place);
      const bend = smooth((place - 0.45) / 0.9);
      const middle = centreAt(place, pelvis, waist, neckBase, frames.pelvis.up, frames.chest.up, this.body, low, high);
      const forward = unit(mix(frames.pelvis.forward, frames.chest.forward, bend));
      const left = acrossTo(mix(frames.pelvis.left, frames.chest.left, bend), forward, [1, 0, 0]);
      this.skin.set(i, {
        centre: along(middle, forward, ahead),
        a: scale(left, -width),
        b: scale(forward, depth),
        square: place > 1.2 && place < 1.95 ? 2.5 : 2.2,
      });
    }
    this.skin.finish();
  }
}

const smooth = (x: number): number => {
  const t = Math.min(1, Math.max(0, x));
  return t * t * (3 - 2 * t);
};

/** A point of the trunk's line: straight below and above, a soft bend (quadratic Bézier) through the waist. */
function centreAt(
  place: number,
  pelvis: Vec3,
  waist: Vec3,
  neckBase: Vec3,
  pelvisUp: Vec3,
  chestUp: Vec3,
  body: Body,
  low: Vec3,
  high: Vec3,
): Vec3 {
  if (place <= 0.45) return along(pelvis, pelvisUp, place * body.lowerTrunk);
  if (place >= 1.35) return along(neckBase, chestUp, (place - 2) * body.upperTrunk);
  const t = (place - 0.45) / 0.9;
  return mix(mix(low, waist, t), mix(waist, high, t), t);
}

/** Which way a hand's palm looks: at the ball while it is held, else as the wrist bends, else towards the thigh. */
export function palmOf(pose: Pose, side: 0 | 1): Vec3 {
  const arm = pose.arms[side];
  const fingers = unit(subtract(arm.fingertip, arm.wrist));
  const forearm = unit(subtract(arm.wrist, arm.elbow));
  const inward = scale(pose.frames.chest.left, side === 0 ? -1 : 1);
  if (pose.ball?.state === 'held') return acrossTo(subtract(pose.ball.centre, arm.wrist), fingers, inward);
  const out = cross(forearm, fingers);
  const bent = smooth((Math.hypot(...out) - 0.25) / 0.45);
  const rest = acrossTo(inward, fingers, pose.frames.chest.forward);
  return bent === 0 ? rest : unit(mix(rest, acrossTo(forearm, fingers, rest), bent));
}
