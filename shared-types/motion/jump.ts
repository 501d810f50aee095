import { type FootSpan, GRAVITY } from './choreography.ts';
import type { Join } from './flight.ts';
import { SNAP, swing } from './foot-path.ts';
import { path } from './smooth.ts';
import type { TrunkPose } from './stance.ts';
import { add, mix, subtract, type Vec3 } from './vector.ts';

/** One foot's way through a jump: it may leave before take-off and land after landing, where the feet are not together. */
export interface FootJump {
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

const STILL: Vec3 = [0, 0, 0];

/** Where a lone foot is, and how fast it moves, `seconds` after it left the ground under a body that still stands. */
function lone(seconds: number): { readonly place: Vec3; readonly rate: Vec3 } {
  const quick = Math.min(seconds, 0.06);
  const more = seconds - quick;
  const height = (SNAP[1] * quick * quick) / 2 + Math.min(0.09, 0.38 * more);
  const rise = more > 0 ? Math.max(0.25, 1.2 - 5 * more) : SNAP[1] * quick;
  const ahead = Math.min(3 * seconds * seconds, 0.12);
  return { place: [0, height, ahead], rate: [0, rise, Math.min(0.6, 6 * seconds)] };
}

/** The spans of one foot off the ground, smooth at every seam. */
export function jumpFoot(jump: FootJump): FootSpan[] {
  const { offAt, onAt, takeOff, landing, from, to } = jump;
  const spans: FootSpan[] = [];
  const early = takeOff - offAt;
  const late = onAt - landing;
  const left = lone(early);
  const leftAt = early > 0 ? add(from, left.place) : from;
  if (early > 0) {
    spans.push({
      kind: 'step',
      from: offAt,
      to: takeOff,
      path: path([
        { t: offAt, p: from, v: STILL, a: SNAP },
        { t: takeOff, p: leftAt, v: left.rate, a: STILL },
      ]),
    });
  }
  const coming = lone(late);
  // Coming down runs the same way backwards, from a little behind.
  const comingAt = late > 0 ? subtract(to, [0, -coming.place[1], 0.5 * coming.place[2]]) : to;
  const comingRate: Vec3 = [0, -coming.rate[1], 0.5 * coming.rate[2]];

  const { share, at } = jump.via;
  const air = landing - takeOff;
  const bow = (GRAVITY * air * air * share * (1 - share)) / 2;
  const pelvis = add(mix(jump.off.pelvis, jump.on.pelvis, share), [0, bow, 0]);
  spans.push(
    swing(
      {
        t: takeOff,
        foot: leftAt,
        pelvis: jump.off.pelvis,
        rate: jump.join.off,
        bend: jump.join.offBend,
        footRate: early > 0 ? left.rate : null,
      },
      {
        t: landing,
        foot: comingAt,
        pelvis: jump.on.pelvis,
        rate: jump.join.on,
        bend: jump.join.onBend,
        footRate: late > 0 ? comingRate : null,
      },
      [{ t: takeOff + share * air, p: subtract(at, pelvis) }],
    ),
  );
  if (late > 0) {
    spans.push({
      kind: 'step',
      from: landing,
      to: onAt,
      path: path([
        { t: landing, p: comingAt, v: comingRate, a: STILL },
        { t: onAt, p: to, v: STILL, a: SNAP },
      ]),
    });
  }
  return spans;
}
