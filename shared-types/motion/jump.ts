import { type FootSpan, GRAVITY, type Join, swing } from './choreography.ts';
import { type Path, type PathKey, pathAt, pathBend, pathRate } from './smooth.ts';
import type { TrunkPose } from './stance.ts';
import { add, mix, subtract, type Vec3 } from './vector.ts';

/** One foot's way through a jump: it may leave before take-off and land after landing, where the feet are not together. */
export interface FootJump {
  readonly pelvis: Path;
  readonly offAt: number;
  readonly onAt: number;
  /** Last foot off, first foot on, seconds. */
  readonly takeOff: number;
  readonly landing: number;
  /** Forefoot on the ground before and after. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** Key poses of the trunk at take-off and landing. */
  readonly off: TrunkPose;
  readonly on: TrunkPose;
  readonly join: Join;
  /** Where the forefoot passes, roughly, after a share of the time in the air: world, m. */
  readonly via: { readonly share: number; readonly at: Vec3 };
}

/** The span of one foot in the air, smooth at both ends whenever they are. */
export function jumpFoot(jump: FootJump): FootSpan {
  const { offAt, onAt, takeOff, landing, from, to } = jump;
  const x = from[0];
  const middle: PathKey[] = [];
  if (takeOff - offAt > 0.09) {
    // The foot that left early hangs clear of the ground and ahead until the other has pushed.
    const early = Math.min(0.14, 0.05 + 0.5 * (takeOff - offAt));
    middle.push({ t: takeOff, p: subtract([x, from[1] + early, from[2] + 0.5 * (takeOff - offAt)], jump.off.pelvis) });
  }
  const { share, at } = jump.via;
  const air = landing - takeOff;
  const bow = (GRAVITY * air * air * share * (1 - share)) / 2;
  const pelvis = add(mix(jump.off.pelvis, jump.on.pelvis, share), [0, bow, 0]);
  middle.push({ t: takeOff + share * air, p: subtract(at, pelvis) });
  if (onAt - landing > 0.09) {
    const late = Math.min(0.12, 0.03 + 0.4 * (onAt - landing));
    middle.push({ t: landing, p: subtract(add(to, [0, late, -0.25 * (onAt - landing)]), jump.on.pelvis) });
  }
  const early = offAt < takeOff;
  const late = onAt > landing;
  return swing(
    {
      t: offAt,
      foot: from,
      pelvis: early ? pathAt(jump.pelvis, offAt) : jump.off.pelvis,
      rate: early ? pathRate(jump.pelvis, offAt) : jump.join.off,
      bend: early ? pathBend(jump.pelvis, offAt) : jump.join.offBend,
    },
    {
      t: onAt,
      foot: to,
      pelvis: late ? pathAt(jump.pelvis, onAt) : jump.on.pelvis,
      rate: late ? pathRate(jump.pelvis, onAt) : jump.join.on,
      bend: late ? pathBend(jump.pelvis, onAt) : jump.join.onBend,
    },
    middle,
  );
}
