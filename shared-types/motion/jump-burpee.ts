import { bodyOf } from './body.ts';
import {
  bentOver,
  feetAt,
  gathered,
  handsAt,
  leaning,
  PLANK_LIFT,
  piked,
  plank,
  prone,
  upright,
} from './burpee-poses.ts';
import type { ArmLine, Choreography, FootSpan, Moment, ReachSpan } from './choreography.ts';
import { ANY_JOIN, type Join, settleFlights } from './flight.ts';
import { stepTo } from './foot-path.ts';
import { jumpFoot } from './jump.ts';
import type { Built, Knobs, Memory } from './movement.ts';
import { type FootPosture, type Pair, type Side, signOf } from './pose.ts';
import { random } from './random.ts';
import { type Key, still, Track } from './smooth.ts';
import type { RepSpecification } from './specification.ts';
import { between, type TrunkPose } from './stance.ts';
import { clamp, degrees, radians, type Vec3 } from './vector.ts';

/**
 * One jump burpee along +z: hands down, feet back, chest to the floor, feet up to the hands, two-footed jump, stand.
 * On a set's first rep the start line is z = 0; later reps begin with the toes at z = 0.
 * @param knobs margins to build for (see truth)
 */
export function jumpBurpee(spec: RepSpecification, knobs: Knobs, _next: Knobs, memory: Memory = {}): Built {
  const body = bodyOf(spec.athlete);
  const H = body.stature;
  const { sheet } = spec;
  const style = random(spec.styleSeed);
  const vary = random(spec.seed);
  const wobble = (size: number): number => spec.variation * size * vary.normal();
  const tired = spec.fatigue;
  const firstSide: Side = spec.seed % 2 === 0 ? 0 : 1;

  const stance = { halfWidth: H * style.between(0.068, 0.08), toesOut: radians(style.between(5, 10)) };
  const midOf = (toeZ: number): number => toeZ - 0.5 * body.footLength * Math.cos(stance.toesOut);
  const toe0 = spec.first ? -knobs.start / 100 : 0;
  const crept = Math.max(0, sheet.creepAllowance - knobs.creep) / 100;
  const toe1 = toe0 + crept;
  const hands = handsAt(body, toe1 + (sheet.handsAllowance - knobs.hands) / 100);
  const toe2 = hands.fingertipsZ - knobs.over / 100;
  const jump = (0.7 + 0.07 * style.uniform()) * H * (1 - 0.28 * tired) * (1 + wobble(0.04));
  const toe3 = toe2 + jump;

  // Key poses.
  const heelsUp = radians(24);
  const feet0 = feetAt(body, stance, toe0);
  const feetDown = feetAt(body, stance, toe1, heelsUp);
  const standing = upright(body, stance, midOf(toe0));
  const shifted = upright(body, stance, midOf(toe1));
  const reached = bentOver(body, hands, feetDown, toe1);
  const landedBack = plank(body, hands, 0.8);
  const feetBack = ([0, 1] as const).map(
    (side): FootPosture => ({
      forefoot: [signOf(side) * stance.halfWidth * 1.1, 0, landedBack.forefootZ],
      turn: 0,
      lift: PLANK_LIFT,
      toes: 0,
    }),
  ) as unknown as Pair<FootPosture>;
  const floor = prone(body, feetBack, (1 - knobs.chest) / 100);
  const pressed = plank(body, hands, 0.86);
  const feetIn = feetAt(body, stance, toe2, heelsUp);
  const pikedBack = piked(body, hands, 0.95);
  const pikedIn = piked(body, hands, 0.955);
  // Feet far past the hands: the trunk is already rising as they land.
  const past = 0.42 * clamp((-knobs.over - 2) / 10, 0, 1);
  const tucked = between(bentOver(body, hands, feetIn, toe2), gathered(body, feetIn, midOf(toe2), 0.34 * H), past);
  const feet2 = feetAt(body, stance, toe2);
  const crouched = gathered(body, feet2, midOf(toe2), (0.39 + 0.03 * style.uniform() - 0.02 * tired) * H);
  const feetOff = feetAt(body, stance, toe2, radians(36));
  const off = leaning(body, feetOff, radians(26 + wobble(1)), radians(33), radians(24));
  const feet3 = feetAt(body, stance, toe3);
  const on = leaning(body, feet3, radians(-26 + wobble(1)), radians(46), radians(30));
  const absorbed = gathered(body, feet3, midOf(toe3), (0.4 - 0.03 * tired) * H);
  const ended = upright(body, stance, midOf(toe3));

  // Times: stretched to the cadence, never faster than a practised athlete.
  const air = 0.455 + 0.02 * style.uniform() - 0.03 * tired + wobble(0.006);
  const stepping = crept > 0.0005 ? 0.6 : 0;
  const stretch = clamp((60 / spec.cadence - air - stepping) / 3.18, 0.9, 1.35) * (1 + 0.12 * tired);
  const rest =
    Math.max(0.05, 60 / spec.cadence - air - stepping - 3.18 * stretch) * (1 + 0.3 * tired) +
    0.25 * tired * vary.uniform();
  const sinceOff = Math.max(0, sheet.togetherAllowance - knobs.off) / 1000;
  let clock = rest + stepping;
  const after = (seconds: number, noise = 0.04): number => {
    clock += seconds * stretch * (1 + wobble(noise));
    return clock;
  };
  const handsDown = after(0.52);
  const backFrom = handsDown + 0.09;
  const back = after(0.4);
  const chestDown = after(0.3);
  const floorEnd = after(0.07 + 0.25 * tired);
  const chestUp = after(0.36 + 0.12 * tired);
  const inFrom = chestUp + 0.01;
  const feetInAt = after(0.33);
  const handsUp = feetInAt + 0.012 - 0.05 * past;
  const crouch = after(0.26);
  // A jump is quick however long the rest takes.
  clock += Math.max(0.3 * Math.min(1.12, stretch) * (1 + wobble(0.02)), sinceOff + 0.09);
  const takeOff = clock;
  const landing = takeOff + air;
  clock = landing;
  const settled = after(0.34);
  const duration = after(0.52);

  const untilOn = Math.max(0, sheet.togetherAllowance - knobs.on) / 1000;

  const build = ([join]: readonly Join[]): Choreography => {
    const v = join ?? ANY_JOIN;
    const trunk = (of: (pose: TrunkPose) => number, rate: 0 | 1 | 2 | null): Track => {
      const end = (t: number, pose: TrunkPose, velocity: Vec3): Key =>
        rate === null ? { t, x: of(pose) } : { t, x: of(pose), v: velocity[rate], a: 0 };
      return new Track([
        { t: 0, x: of(standing) },
        { t: rest, x: of(standing), v: 0, a: 0 },
        ...(stepping > 0 ? [{ t: rest + stepping, x: of(shifted), ...(crept > 0.1 ? { v: 0, a: 0 } : {}) }] : []),
        { t: handsDown, x: of(reached) },
        { t: backFrom + 0.42 * (back - backFrom), x: of(pikedBack) },
        { t: back, x: of(landedBack.trunk) },
        { t: chestDown, x: of(floor), v: 0, a: 0 },
        { t: floorEnd, x: of(floor), v: 0, a: 0 },
        { t: chestUp, x: of(pressed.trunk) },
        { t: inFrom + 0.42 * (feetInAt - inFrom), x: of(pikedIn) },
        { t: feetInAt + 0.19 * past, x: of(tucked) },
        { t: crouch, x: of(crouched) },
        end(takeOff, off, v.off),
        end(landing, on, v.on),
        { t: settled, x: of(absorbed) },
        { t: duration, x: of(ended) },
      ]);
    };
    // Long steps need a lower body.
    const dip = new Track([
      { t: rest, x: 0 },
      { t: rest + 0.42 * stepping, x: -0.115 * crept * Math.min(1, crept / 0.3) },
      { t: rest + 0.85 * stepping, x: 0 },
    ]);
    const pelvis = {
      x: trunk((p) => p.pelvis[0], 0),
      y: trunk((p) => p.pelvis[1], 1).plus(dip),
      z: trunk((p) => p.pelvis[2], 2),
    };
    const foot = (side: Side): Choreography['feet'][0] => {
      const first = side === firstSide;
      const lag = first ? 0 : spec.variation * 0.012 * style.uniform();
      const offAt = first ? takeOff - sinceOff : takeOff;
      const onAt = first ? landing : landing + untilOn;
      const stepFrom = rest + (first ? 0 : 0.3);
      const spans: FootSpan[] = [
        ...(stepping > 0
          ? [
              { kind: 'planted', from: 0, to: stepFrom, at: feet0[side].forefoot } as const,
              stepTo(
                stepFrom,
                stepFrom + 0.3,
                feet0[side].forefoot,
                feetDown[side].forefoot,
                crept > 0.08 ? 0.05 : 0.02,
              ),
            ]
          : []),
        { kind: 'planted', from: stepping > 0 ? stepFrom + 0.3 : 0, to: backFrom + lag, at: feetDown[side].forefoot },
        stepTo(backFrom + lag, back - 0.05 + lag, feetDown[side].forefoot, feetBack[side].forefoot, 0.038 * H),
        { kind: 'planted', from: back - 0.05 + lag, to: inFrom + lag, at: feetBack[side].forefoot },
        stepTo(inFrom + lag, feetInAt - 0.012 + lag, feetBack[side].forefoot, feetIn[side].forefoot, 0.056 * H),
        { kind: 'planted', from: feetInAt - 0.012 + lag, to: offAt, at: feet2[side].forefoot },
        ...jumpFoot({
          offAt,
          onAt,
          takeOff,
          landing,
          from: feet2[side].forefoot,
          to: feet3[side].forefoot,
          off,
          on,
          join: v,
          via: { share: 0.5, at: [feet2[side].forefoot[0], 0.16 * H, feet2[side].forefoot[2] + 0.42 * jump] },
        }),
        { kind: 'planted', from: onAt, to: duration, at: feet3[side].forefoot },
      ];
      return {
        spans,
        turn: new Track([
          { t: backFrom, x: feet0[side].turn },
          { t: back, x: 0 },
          { t: inFrom, x: 0 },
          { t: feetInAt - 0.02, x: feet2[side].turn },
        ]),
        lift: new Track([
          ...(crept > 0.05
            ? [
                { t: rest, x: 0 },
                { t: rest + 0.5 * stepping, x: radians(10) },
              ]
            : []),
          { t: rest + stepping + 0.08 * (handsDown - rest - stepping), x: 0 },
          { t: rest + stepping + 0.62 * (handsDown - rest - stepping), x: radians(20) },
          { t: handsDown, x: heelsUp, v: 0, a: 0 },
          { t: backFrom, x: heelsUp, v: 0, a: 0 },
          { t: backFrom + 0.29 * (back - backFrom), x: radians(72) },
          { t: back - 0.05, x: PLANK_LIFT, v: 0, a: 0 },
          { t: inFrom, x: PLANK_LIFT, v: 0, a: 0 },
          { t: inFrom + 0.28 * (feetInAt - inFrom), x: radians(79) },
          { t: inFrom + 0.6 * (feetInAt - inFrom), x: radians(66) },
          { t: feetInAt, x: heelsUp },
          { t: crouch, x: radians(26) },
          { t: crouch + 0.6 * (offAt - crouch), x: radians(34) },
          { t: offAt, x: radians(36) - (takeOff - offAt) * 1.2 },
          { t: offAt + 0.075, x: radians(58) },
          { t: (takeOff + landing) / 2 + 0.05, x: radians(20) },
          { t: onAt, x: radians(15), v: 0, a: 0 },
          { t: Math.max(settled, onAt + 0.12), x: 0 },
        ]),
        toes: new Track([
          { t: backFrom + lag, x: 0 },
          { t: (backFrom + back) / 2 + lag, x: radians(26) },
          { t: back - 0.05 + lag, x: 0, v: 0, a: 0 },
          { t: inFrom + lag, x: 0, v: 0, a: 0 },
          { t: (inFrom + feetInAt) / 2 + lag, x: radians(36) },
          { t: feetInAt - 0.012 + lag, x: 0, v: 0, a: 0 },
          { t: offAt, x: 0, v: 0, a: 0 },
          { t: offAt + 0.16, x: radians(35) },
          { t: (takeOff + landing) / 2 + 0.08, x: radians(8) },
          { t: onAt, x: 0 },
        ]),
      };
    };
    const curve = (...pairs: readonly (readonly [number, number])[]): Track =>
      new Track(pairs.map(([t, deg]) => ({ t, x: radians(deg) })));
    const swingBack = -42 + 10 * tired;
    const arm = (side: Side): ArmLine => {
      const grip: ReachSpan = {
        from: handsDown - 0.4 * stretch,
        arrive: handsDown,
        leave: handsUp,
        to: handsUp + 0.22,
        goal: {
          kind: 'point',
          wrist: [signOf(side) * hands.halfWidth, hands.wristHeight, hands.wristZ],
          fingers: [-signOf(side) * 0.1, hands.fingers[1], hands.fingers[2]],
          elbow: [0.34, -0.82, -0.45],
        },
      };
      const late = 0.012 * (side === firstSide ? 1 : -1) * spec.variation;
      return {
        raise: curve(
          [rest, 4],
          [handsDown, 85],
          [chestDown, 45],
          [floorEnd, 45],
          [chestUp, 80],
          [feetInAt, 100],
          [handsUp + 0.1, 74],
          [crouch + 0.06 + late, swingBack],
          [takeOff + 0.03 + late, 118],
          [takeOff + 0.5 * air + late, 105],
          [landing + 0.05, 48],
          [settled, 20],
          [duration, 4],
        ),
        spread: curve(
          [rest, 9],
          [handsDown, 12],
          [feetInAt, 14],
          [crouch, 14],
          [takeOff, 12],
          [landing, 22],
          [settled, 18],
          [duration, 9],
        ),
        bend: curve(
          [rest, 14],
          [handsDown, 15],
          [chestDown, 90],
          [floorEnd, 90],
          [chestUp, 20],
          [handsUp + 0.1, 72],
          [crouch + 0.06, 20],
          [takeOff, 30],
          [landing, 28],
          [duration, 14],
        ),
        reaches: [grip],
      };
    };
    return {
      body,
      duration,
      pelvis,
      pelvisTurn: still(0),
      pelvisPitch: trunk((p) => p.pelvisPitch, null),
      pelvisRoll: still(0),
      chestTurn: still(0),
      chestPitch: trunk((p) => p.chestPitch, null),
      chestRoll: still(0),
      headTurn: still(0),
      headPitch: curve(
        [rest, 4],
        [handsDown, headOver(reached)],
        [(backFrom + back) / 2, headOver(pikedBack)],
        [back, 58],
        [chestDown, 68],
        [floorEnd, 68],
        [chestUp, 58],
        [(inFrom + feetInAt) / 2, headOver(pikedIn)],
        [feetInAt, headOver(tucked)],
        [handsUp + 0.1, Math.max(12, degrees(tucked.chestPitch + crouched.chestPitch) / 2 - 42)],
        [crouch, headOver(crouched)],
        [takeOff, -4],
        [landing, 22],
        [settled, 22],
        [duration, 4],
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
    { name: 'hands-down', t: handsDown },
    { name: 'feet-back', t: back },
    { name: 'chest-down', t: chestDown },
    { name: 'chest-up', t: chestUp },
    { name: 'feet-in', t: feetInAt },
    { name: 'hands-up', t: handsUp },
    { name: 'crouch', t: crouch },
    { name: 'take-off', t: takeOff },
    { name: 'landing', t: landing },
    { name: 'end', t: duration },
  ];
  return {
    choreography: { ...settleFlights([{ from: takeOff, to: landing }], build, memory), moments },
    scene: { wallZ: null, box: null, startLineZ: spec.first ? 0 : null },
  };
}

/** Head's pitch over a level trunk, degrees: looking ahead of the hands as far as a neck extends. */
const headOver = (trunk: TrunkPose): number => Math.max(12, degrees(trunk.chestPitch) - 46);
