import { bodyOf } from './body.ts';
import { handNearBox, leavingBent, standingBent, stoopTo } from './box-poses.ts';
import { gathered, leaning } from './burpee-poses.ts';
import { type ArmLine, type Choreography, type FootSpan, GRAVITY, type Moment } from './choreography.ts';
import { ANY_JOIN, type Join, settleFlights } from './flight.ts';
import { jumpFoot } from './jump.ts';
import { type Box, type Built, type Knobs, type Memory, UNASKED } from './movement.ts';
import { type FootPosture, type Pair, type Side, signOf } from './pose.ts';
import { random } from './random.ts';
import { type Key, still, Track } from './smooth.ts';
import type { RepSpecification } from './specification.ts';
import { flatFeet, HANGING, stand, type TrunkPose } from './stance.ts';
import { turningBody, turningFoot } from './turn.ts';
import { add, clamp, degrees, radians, type Vec3 } from './vector.ts';

/** Seconds in the air between two heights of the pelvis with `spare` metres of rise above the higher. */
function airTime(from: number, to: number, spare: number): number {
  const top = Math.max(from, to) + spare;
  return Math.sqrt((2 * (top - from)) / GRAVITY) + Math.sqrt((2 * (top - to)) / GRAVITY);
}

/**
 * One box jump-over: two feet onto the box, stand, off the far side, turn round. The box stands at the origin; the
 * athlete comes from -z and ends beyond it, facing back, as the next rep (half a turn round) begins.
 * @param knobs margins to build for (see truth); an unasked `touch` leaves the hands alone
 */
export function boxJumpOver(spec: RepSpecification, knobs: Knobs, _next: Knobs, memory: Memory = {}): Built {
  const body = bodyOf(spec.athlete);
  const H = body.stature;
  const { sheet } = spec;
  const style = random(spec.styleSeed);
  const vary = random(spec.seed);
  const wobble = (size: number): number => spec.variation * size * vary.normal();
  const tired = spec.fatigue;
  const firstSide: Side = spec.seed % 2 === 0 ? 0 : 1;
  const box: Box = { z: 0, halfDepth: sheet.boxDepth / 2, halfWidth: sheet.boxWidth / 2, height: sheet.boxHeight };
  const top = box.height;

  const stance = { halfWidth: H * style.between(0.07, 0.085), toesOut: radians(style.between(5, 11)) };
  const midOut =
    box.halfDepth +
    (0.285 + 0.03 * style.uniform() + 0.5 * Math.max(0, sheet.boxHeight / H - 0.36)) * H +
    0.5 * body.footLength;
  const midOn = clamp(-0.02 + wobble(0.012), -0.04, 0.01);

  const feetOn = (mid: number, surface: number, lift = 0): Pair<FootPosture> => {
    const feet = flatFeet(body, stance, mid, surface);
    return [
      { ...feet[0], lift },
      { ...feet[1], lift },
    ];
  };
  const feet0 = feetOn(-midOut, 0);
  const feet1 = feetOn(midOn, top);
  const feet2 = feetOn(midOut, 0);
  const easy = (feet: Pair<FootPosture>, mid: number): TrunkPose =>
    stand(body, feet, radians(7), radians(4), mid + 0.006 * H, HANGING, null);

  // Key poses.
  const standing = easy(feet0, -midOut);
  const crouched = gathered(body, feet0, -midOut, (0.4 + 0.02 * style.uniform() - 0.02 * tired) * H);
  const lifted = radians(38);
  const off1 = leaning(body, feetOn(-midOut, 0, lifted), radians(19 + wobble(1)), radians(43), radians(17));
  const hover = Math.max(0, (1 - knobs.on) / 100);
  const hovering = hover > 0.001;
  const on1 = leaning(body, feet1, radians(-21 + wobble(1)), radians(80 + 6 * tired), radians(38));
  const closing = sheet.tallAllowance - knobs.tall;
  const open = standingBent(body, feet1, midOn, closing);
  const asked = knobs.touch < UNASKED;
  const hand = handNearBox(
    body,
    box,
    firstSide === 0 ? 1 : 0,
    Math.max(0, -knobs.touch / 100) + (knobs.touch < 0 ? 0 : 0.006),
    Math.max(0.0005, knobs.touch / 100),
  );
  const loosely = hovering ? Math.min(1, hover / 0.06) : 0;
  const aside = -signOf(firstSide) * stance.halfWidth * 0.75 * loosely;
  const sunk = asked ? stoopTo(body, feet1, hand, aside) : null;
  const soft = gathered(body, feet1, midOn, top + (0.37 - 0.02 * tired) * H);
  const dipped = standingBent(body, feet1, midOn, Math.max(48, closing + 12));
  const off2 = leavingBent(body, feetOn(midOn, top, radians(30)), 23, Math.max(30, closing + 5));
  const on2 = leaning(body, feet2, radians(-20 + wobble(1)), radians(56), radians(30));
  const absorbed = gathered(body, feet2, midOut, (0.4 - 0.02 * tired) * H);
  const ended = easy(feet2, midOut);

  // Times.
  const air1 = airTime(off1.pelvis[1], on1.pelvis[1], 0.06 + 0.02 * style.uniform());
  const air2 = airTime(off2.pelvis[1], on2.pelvis[1], 0.05);
  const base = 0.42 + 0.3 + 0.2 + 0.42 + 0.3 + 0.24 + 0.28 + 0.3 + 0.95;
  const stretch = clamp((60 / spec.cadence - air1 - air2) / base, 0.88, 1.3) * (1 + 0.14 * tired);
  const rest =
    Math.max(0.05, 60 / spec.cadence - air1 - air2 - base * stretch) * (1 + 0.3 * tired) + 0.3 * tired * vary.uniform();
  const sinceOff = Math.max(0, sheet.togetherAllowance - knobs.off) / 1000;
  let clock = rest;
  const after = (seconds: number, noise = 0.035): number => {
    clock += seconds * stretch * (1 + wobble(noise));
    return clock;
  };
  const crouch = after(0.42);
  // A jump is quick however long the rest takes.
  const quickly = (seconds: number): number => {
    clock += seconds * Math.min(1.12, stretch) * (1 + wobble(0.02));
    return clock;
  };
  const takeOff1 = Math.max(quickly(0.3), crouch + sinceOff + 0.09);
  clock = takeOff1;
  const landing1 = takeOff1 + air1;
  clock = landing1;
  const sink = after(0.2);
  const tallest = after(0.42);
  const dip = after(0.3);
  const takeOff2 = quickly(0.24);
  const landing2 = takeOff2 + air2;
  clock = landing2;
  const settled = after(0.28);
  const risen = after(0.3);
  const turnBy = after(0.95);
  const duration = turnBy;
  const turn = { from: risen - 0.12, to: turnBy, direction: style.uniform() < 0.5 ? 1 : -1, centreZ: midOut } as const;

  const turnPelvis = new Track(turningBody(turn, 0));
  const build = (joins: readonly Join[]): Choreography => {
    const jump1 = joins[0] ?? ANY_JOIN;
    const jump2 = joins[1] ?? jump1;
    const trunk = (of: (pose: TrunkPose) => number, rate: 0 | 1 | 2 | null): Track => {
      const join = (t: number, pose: TrunkPose, v: Vec3): Key =>
        rate === null ? { t, x: of(pose) } : { t, x: of(pose), v: v[rate], a: 0 };
      return new Track([
        { t: 0, x: of(standing) },
        { t: rest, x: of(standing), v: 0, a: 0 },
        { t: crouch, x: of(crouched) },
        join(takeOff1, off1, jump1.off),
        join(landing1, on1, jump1.on),
        { t: sink, x: of(sunk ?? soft) },
        { t: tallest, x: of(open), v: 0, a: 0 },
        { t: dip, x: of(dipped) },
        join(takeOff2, off2, jump2.off),
        join(landing2, on2, jump2.on),
        { t: settled, x: of(absorbed) },
        { t: risen, x: of(ended), v: 0, a: 0 },
      ]);
    };
    // The pelvis stands a little behind or ahead of the mid-foot: that offset turns round with the body.
    const offset = ended.pelvis[2] - midOut;
    const z = trunk((p) => p.pelvis[2], 2);
    const turnKeys = [0, 0.25, 0.5, 0.75, 1].map((share) => {
      const t = turn.from + share * (turn.to - turn.from);
      return { t, angle: turnPelvis.at(t), sink: Math.sin(Math.PI * share) ** 2 * 0.022 * H };
    });
    const pelvis = {
      x: new Track([
        { t: crouch, x: 0 },
        { t: takeOff1, x: 0, v: jump1.off[0], a: 0 },
        { t: landing1, x: aside, v: jump1.on[0], a: 0 },
        { t: sink, x: aside, v: 0, a: 0 },
        { t: dip, x: aside, v: 0, a: 0 },
        { t: takeOff2, x: aside, v: jump2.off[0], a: 0 },
        { t: landing2, x: 0, v: jump2.on[0], a: 0 },
        { t: settled, x: 0, v: 0, a: 0 },
        { t: turn.from, x: 0, v: 0, a: 0 },
        ...turnKeys.slice(1).map((key) => ({ t: key.t, x: offset * Math.sin(key.angle) })),
      ]),
      y: trunkThenTurn(
        trunk((p) => p.pelvis[1], 1),
        turnKeys.map((key) => ({ t: key.t, x: -key.sink })),
      ),
      z: trunkThenTurn(
        z,
        turnKeys.map((key) => ({ t: key.t, x: offset * (Math.cos(key.angle) - 1) })),
      ),
    };
    const foot = (side: Side): Choreography['feet'][0] => {
      const first = side === firstSide;
      const offAt = first ? takeOff1 - sinceOff : takeOff1;
      const hangs = hovering && first;
      // The foot that finds no box hangs: the higher, the more its toes point down and the farther it trails.
      const loose = hangs ? loosely : 0;
      const hang = radians(asked ? 30 : 46) * (hangs ? Math.min(1, hover / 0.015) : 0);
      const droop = radians(32) * loose;
      const trail = -0.05 * loose - 0.3 * hover - (asked ? 0.05 * loose : 0);
      const onBox: Vec3 = add(feet1[side].forefoot, [
        0,
        (hangs ? hover : 0) + body.toes * Math.sin(droop),
        trail * (hangs ? 1 : 0),
      ]);
      const x = feet0[side].forefoot[0];
      const late = first ? 0 : 0.006 * spec.variation;
      const turning = turningFoot(body, stance, turn, side);
      const spans: FootSpan[] = [
        { kind: 'planted', from: 0, to: offAt, at: feet0[side].forefoot },
        ...jumpFoot({
          offAt,
          onAt: landing1 + late,
          takeOff: takeOff1,
          landing: landing1,
          from: feet0[side].forefoot,
          to: onBox,
          off: withX(off1, pelvis.x.at(takeOff1)),
          on: withX(on1, pelvis.x.at(landing1)),
          join: jump1,
          via: { share: 0.55, at: [x, top + 0.16, -box.halfDepth - 0.06] },
        }),
        { kind: 'planted', from: landing1 + late, to: takeOff2, at: onBox },
        ...jumpFoot({
          offAt: takeOff2,
          onAt: landing2 + late,
          takeOff: takeOff2,
          landing: landing2,
          from: onBox,
          to: feet2[side].forefoot,
          off: withX(off2, pelvis.x.at(takeOff2)),
          on: withX(on2, 0),
          join: jump2,
          via: { share: 0.5, at: [x, top + 0.06, box.halfDepth + 0.13 * H] },
        }),
        { kind: 'planted', from: landing2 + late, to: turn.from, at: feet2[side].forefoot },
        ...turning.spans,
      ];
      return {
        spans,
        turn: new Track([{ t: 0, x: feet0[side].turn }, ...turning.keys]),
        lift: new Track([
          { t: crouch - 0.16, x: 0 },
          { t: crouch, x: radians(18) },
          { t: crouch + 0.6 * (offAt - crouch), x: radians(30) },
          { t: offAt, x: lifted - (takeOff1 - offAt) * 1.2 },
          { t: offAt + 0.075, x: radians(55) },
          { t: (takeOff1 + landing1) / 2 + 0.06, x: Math.max(radians(20), 0.95 * hang) },
          { t: landing1, x: Math.max(hang, radians(9)), v: 0, a: 0 },
          { t: sink, x: Math.max(hang, radians(7)) },
          { t: tallest - 0.12, x: hang, v: 0, a: 0 },
          { t: dip, x: Math.max(hang, radians(9)) },
          { t: takeOff2, x: hangs ? Math.max(hang, radians(40)) : radians(30) },
          { t: takeOff2 + 0.1, x: radians(38) },
          { t: landing2 - 0.1, x: radians(16) },
          { t: landing2, x: 0 },
        ]),
        toes: new Track([
          { t: offAt, x: 0 },
          { t: offAt + 0.15, x: radians(30) },
          { t: (takeOff1 + landing1) / 2 + 0.07, x: radians(6) },
          { t: landing1, x: droop, v: 0, a: 0 },
          { t: takeOff2, x: droop, v: 0, a: 0 },
          { t: takeOff2 + 0.16, x: radians(25) },
          { t: landing2 - 0.07, x: radians(8) },
          { t: landing2, x: 0 },
        ]),
      };
    };
    const curve = (...pairs: readonly (readonly [number, number])[]): Track =>
      new Track(pairs.map(([t, deg]) => ({ t, x: radians(deg) })));
    const arm = (side: Side): ArmLine => {
      const late = 0.012 * (side === firstSide ? 1 : -1) * spec.variation;
      return {
        raise: curve(
          [rest, 4],
          [crouch + 0.04 + late, -44 + 8 * tired],
          [takeOff1 + 0.02 + late, 116],
          [landing1 - 0.08, 80],
          [sink, asked ? (side === hand.side ? 70 : 118) : 44],
          [tallest, 6],
          [dip + late, -24],
          [takeOff2 + 0.05 + late, 42],
          [landing2, 62],
          [settled, 22],
          [risen, 6],
          [duration, 4],
        ),
        spread: curve(
          [rest, 9],
          [crouch, 14],
          [takeOff1, 12],
          [landing1, 20],
          [tallest, 9],
          [takeOff2, 16],
          [landing2, 28],
          [risen, 9],
        ),
        bend: curve(
          [rest, 14],
          [crouch, 30],
          [crouch + 0.4 * (takeOff1 - crouch), 104],
          [crouch + 0.8 * (takeOff1 - crouch), 114],
          [takeOff1 + 0.08, 46],
          [sink, asked && side !== hand.side ? 84 : 48],
          [tallest, 14],
          [takeOff2, 30],
          [landing2, 36],
          [risen, 16],
          [duration, 14],
        ),
        reaches:
          asked && side === hand.side
            ? [
                {
                  from: landing1 - 0.14,
                  arrive: sink,
                  leave: sink + 0.08,
                  to: sink + 0.36,
                  goal: { kind: 'point', wrist: hand.wrist, fingers: hand.fingers, elbow: [0.8, -0.2, -0.4] },
                },
              ]
            : [],
      };
    };
    return {
      body,
      duration,
      pelvis,
      pelvisTurn: turnPelvis,
      pelvisPitch: trunk((p) => p.pelvisPitch, null),
      pelvisRoll: still(0),
      chestTurn: new Track(turningBody(turn, 8)),
      chestPitch: trunk((p) => p.chestPitch, null),
      chestRoll: still(0),
      headTurn: new Track(turningBody(turn, 28)),
      headPitch: curve(
        [rest, 12],
        [crouch, 18],
        [takeOff1, 12],
        [landing1, 38],
        [sink, sunk === null ? 34 : Math.max(34, degrees(sunk.chestPitch) - 46)],
        [tallest, 12],
        [dip, 34],
        [landing2, 32],
        [risen, 8],
        [duration, 12],
      ),
      feet: [foot(0), foot(1)],
      arms: [arm(0), arm(1)],
      ball: [],
      ballRadius: sheet.ballRadius,
      flights: [],
      moments: [],
    };
  };
  const moments: Moment[] = [
    { name: 'start', t: 0 },
    { name: 'crouch', t: crouch },
    { name: 'take-off', t: takeOff1 },
    { name: 'box-landing', t: landing1 },
    { name: 'tallest', t: tallest },
    { name: 'box-take-off', t: takeOff2 },
    { name: 'landing', t: landing2 },
    { name: 'turn', t: turn.from },
    { name: 'end', t: duration },
  ];
  const flights = [
    { from: takeOff1, to: landing1 },
    { from: takeOff2, to: landing2 },
  ];
  return {
    choreography: { ...settleFlights(flights, build, memory), moments },
    scene: { wallZ: null, box, startLineZ: null },
  };
}

const withX = (pose: TrunkPose, x: number): TrunkPose => ({ ...pose, pelvis: [x, pose.pelvis[1], pose.pelvis[2]] });

/** A curve with another, which begins and ends at rest, laid on top of it. */
function trunkThenTurn(base: Track, extra: readonly Key[]): Track {
  return base.plus(new Track(extra));
}
