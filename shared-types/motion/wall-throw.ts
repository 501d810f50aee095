import { type Body, bodyOf } from './body.ts';
import { type Choreography, GRAVITY, type Moment } from './choreography.ts';
import { type Built, type Knobs, UNASKED } from './movement.ts';
import { type Pickup, pickUp } from './pick-up.ts';
import { random } from './random.ts';
import { type Key, still, Track } from './smooth.ts';
import { CONTACT_ALLOWANCE, type RepSpecification } from './specification.ts';
import { ballAtChest, CARRYING, flatFeet, type Load, squat, stand, type TrunkPose } from './stance.ts';
import { add, clamp, radians, type Vec3 } from './vector.ts';
import { type Throw, throwBall } from './wall-throw-ball.ts';

/** Athlete's mid-foot to the wall, as a share of stature. */
const WALL_DISTANCE = 0.48;
/** Catch to standing with the ball at the chest, seconds. */
const ABSORB = 0.46;

/**
 * One wall throw: stand with the ball, squat, drive and throw, catch, stand. The athlete looks along +z at the wall.
 * @param knobs margins to build for (see truth); an unasked `bounce` means that the ball is never dropped
 * @param next the following rep's, whose standing this rep ends in
 */
export function wallThrow(spec: RepSpecification, knobs: Knobs, next: Knobs): Built {
  const body = bodyOf(spec.athlete);
  const H = body.stature;
  const style = random(spec.styleSeed);
  const vary = random(spec.seed);
  const wobble = (size: number): number => spec.variation * size * vary.normal();
  const tired = spec.fatigue;

  const stance = { halfWidth: H * style.between(0.118, 0.14), toesOut: radians(style.between(14, 24)) };
  const shin = radians(style.between(26, 31) + 2 * tired + wobble(0.8));
  const feet = flatFeet(body, stance);
  const over = 0.006 * H;
  const r = spec.sheet.ballRadius;
  const load = (chestPitch: number): Load => ({ mass: spec.sheet.ballMass, place: ballAtChest(body, r, chestPitch) });
  const standing = (margin: number): TrunkPose => {
    const flexion = Math.max(3, spec.sheet.tallAllowance - margin);
    return stand(body, feet, radians(flexion), radians(1 + 0.42 * flexion), over, CARRYING, load);
  };
  const begin = standing(knobs.stand);
  const end = standing(next.stand);

  const knee = body.ankleHeight + body.shank * Math.cos(shin);
  const hipHeight = knee + body.flesh.kneeTop - body.flesh.hipCrease - knobs.depth / 100;
  const shallow = clamp((hipHeight - 0.27 * H) / (0.24 * H), 0, 1);
  const low = squat(body, feet, hipHeight, shin * (1 - 0.75 * shallow), over, CARRYING, load);

  const raised = radians(20 - 8 * tired + wobble(3));
  const lifted = [
    { ...feet[0], lift: raised },
    { ...feet[1], lift: raised },
  ] as const;
  const top = stand(body, lifted, radians(9), radians(-2), 0.045 * H, CARRYING, null);
  const tall = stand(body, feet, radians(8), radians(1), over, CARRYING, null);

  // Half way the shins are still steep and the hips well back; a straight blend would push the knees ahead.
  const half = (from: TrunkPose, to: TrunkPose): TrunkPose =>
    squat(body, feet, (from.pelvis[1] + to.pelvis[1]) / 2, shin * (1 - 0.75 * shallow) * 0.62, over, CARRYING, load);
  const halfDown = half(begin, low);
  const halfUp = half(low, top);

  const neck = neckOf(body, begin);
  const pickup =
    knobs.bounce < UNASKED
      ? pickUp(
          { body, feet, standing: begin, ball: add(neck, ballAtChest(body, r, begin.chestPitch)), ballRadius: r },
          Math.max(0, -(knobs.bounce - CONTACT_ALLOWANCE)) / 100,
          0.35 + 0.3 * vary.uniform(),
        )
      : null;

  // What the ball does on its way decides the times.
  const contactHeight = spec.sheet.lineHeight + knobs.line / 100;
  const reachUp = (0.235 + 0.02 * style.uniform() - 0.03 * tired) * H + r;
  const releaseHeight = Math.min(neckOf(body, top)[1] + reachUp, contactHeight - 0.25);
  const hang = Math.sqrt((2 * (contactHeight - releaseHeight)) / GRAVITY);
  // The faster it falls the higher it is met, so that the arms have room to give.
  const speed = Math.sqrt(2 * GRAVITY * Math.max(0.1, contactHeight - 0.95 * H));
  const catchHeight = Math.min((0.86 + 0.005 * wobble(1)) * H + 0.045 * speed, contactHeight - 0.3);
  const fall = Math.sqrt((2 * (contactHeight - catchHeight)) / GRAVITY);
  const slow = 1 + 0.25 * tired;
  const spare = 60 / spec.cadence - hang - fall - ABSORB;
  const down = clamp(0.5 * spare, 0.62, 1) * slow * (1 + wobble(0.03));
  const drive = clamp(0.4 * spare, 0.56, 0.72) * slow * (1 + wobble(0.03));
  const rest = Math.max(0.06, spare - down - drive) + 0.3 * tired * vary.uniform();
  const ready = pickup?.ready ?? 0;
  const descent = ready + rest;
  const bottom = descent + down;
  const release = bottom + drive;
  const contact = release + hang;
  const caught = contact + fall;
  const duration = caught + ABSORB;

  const trunk = (of: (pose: TrunkPose) => number): Track =>
    new Track([
      { t: 0, x: of(begin) },
      ...(pickup === null ? [] : pickupKeys(pickup, of, begin)),
      { t: descent, x: of(begin), v: 0, a: 0 },
      { t: descent + down / 2, x: of(halfDown) },
      { t: bottom, x: of(low) },
      { t: bottom + (drive + 0.05) / 2, x: of(halfUp) },
      { t: release + 0.05, x: of(top) },
      { t: release + 0.42, x: of(tall), v: 0, a: 0 },
      { t: Math.max(caught, release + 0.6), x: of(end), v: 0, a: 0 },
      { t: duration, x: of(end) },
    ]);
  const at = (...pairs: readonly (readonly [number, number])[]): Track => new Track(pairs.map(([t, x]) => ({ t, x })));
  const side = clamp(aimOf(spec, knobs) / 0.4, -1.3, 1.3);
  const turned = (before: number, after: number): Track =>
    at([release - 0.2, 0], [contact, radians(before) * side], [caught, radians(after) * side], [duration, 0]);
  const lift = at([bottom + 0.62 * drive, 0], [release + 0.05, raised], [release + 0.4, 0]);
  const look: Key[] = [
    { t: bottom, x: Math.max(radians(-6), low.chestPitch - radians(46)) },
    { t: bottom + drive / 2, x: Math.max(radians(-14), halfUp.chestPitch - radians(46)) },
    { t: release, x: radians(-24) },
    { t: contact, x: radians(-34) },
    { t: caught, x: radians(-16) },
    { t: duration, x: radians(2) },
  ];
  const watch: Key[] =
    pickup === null
      ? [{ t: 0, x: radians(2) }]
      : [
          { t: 0, x: radians(2) },
          { t: pickup.take, x: radians(48) },
          { t: pickup.ready, x: radians(2) },
        ];

  const footLine = (n: 0 | 1): Choreography['feet'][0] => ({
    spans: [{ kind: 'planted', from: 0, to: duration, at: feet[n].forefoot }],
    turn: still(feet[n].turn),
    lift,
    toes: still(0),
  });
  const raise = (n: 0 | 1): Choreography['arms'][0] => ({
    raise: at(
      [0, CARRYING.raise],
      [bottom + 0.35 * drive, CARRYING.raise],
      [release, 2.5],
      [contact, 2.35 + 0.1 * n],
      [caught, 1.9],
      [duration, CARRYING.raise],
    ),
    spread: at([0, CARRYING.spread], [release, 0.22], [contact, 0.25], [duration, CARRYING.spread]),
    bend: at([0, CARRYING.bend], [release, 0.35], [contact, 0.75], [caught, 1], [duration, CARRYING.bend]),
    reaches: [],
  });
  const bare: Choreography = {
    body,
    duration,
    pelvis: {
      x: at([release, 0], [caught, 0.09 * side], [duration, 0]),
      y: trunk((pose) => pose.pelvis[1]).plus(
        at(
          [release + 0.05, 0],
          [contact, -0.016 * H * Math.abs(side)],
          [caught, -0.022 * H * Math.abs(side)],
          [duration, 0],
        ),
      ),
      z: trunk((pose) => pose.pelvis[2]),
    },
    pelvisTurn: turned(8, 20),
    pelvisPitch: trunk((pose) => pose.pelvisPitch),
    pelvisRoll: still(0),
    chestTurn: turned(16, 45),
    chestPitch: trunk((pose) => pose.chestPitch),
    chestRoll: at([contact - 0.1, 0], [caught, radians(13) * side], [duration, 0]),
    headTurn: turned(20, 38),
    headPitch: new Track([...watch, ...look]),
    feet: [footLine(0), footLine(1)],
    arms: [raise(0), raise(1)],
    ball: [],
    ballRadius: r,
    flights: [],
    moments: [],
  };
  const plan: Throw = {
    ready,
    descent,
    bottom,
    release,
    contact,
    caught,
    drive,
    releaseHeight,
    contactHeight,
    catchHeight,
    aim: aimOf(spec, knobs),
    wallZ: WALL_DISTANCE * H,
  };
  const moments: Moment[] = [
    { name: 'start', t: 0 },
    ...(pickup?.moments ?? []),
    { name: 'ready', t: ready },
    { name: 'descent', t: descent },
    { name: 'bottom', t: bottom },
    { name: 'release', t: release },
    { name: 'apex', t: contact },
    { name: 'wall-contact', t: contact },
    { name: 'catch', t: caught },
    { name: 'end', t: duration },
  ];
  return {
    choreography: { ...throwBall(bare, plan, pickup), moments },
    scene: { wallZ: plan.wallZ, box: null, startLineZ: null },
  };
}

/** Metres beside the target's middle at which the ball meets the wall; the side follows the seed. */
function aimOf(spec: RepSpecification, knobs: Knobs): number {
  const sign = (spec.seed >>> 3) % 2 === 0 ? 1 : -1;
  return sign * Math.max(0, spec.sheet.targetWidth / 2 - knobs.aim / 100);
}

function neckOf(body: Body, trunk: TrunkPose): Vec3 {
  const p = trunk.pelvis;
  return [
    p[0],
    p[1] + body.lowerTrunk * Math.cos(trunk.pelvisPitch) + body.upperTrunk * Math.cos(trunk.chestPitch),
    p[2] + body.lowerTrunk * Math.sin(trunk.pelvisPitch) + body.upperTrunk * Math.sin(trunk.chestPitch),
  ];
}

function pickupKeys(pickup: Pickup, of: (pose: TrunkPose) => number, begin: TrunkPose): Key[] {
  const bend = Math.max(pickup.drop + 0.1, pickup.take - 0.95);
  return [
    { t: bend, x: of(begin), v: 0, a: 0 },
    { t: pickup.take, x: of(pickup.bent), v: 0, a: 0 },
    { t: pickup.ready, x: of(begin), v: 0, a: 0 },
  ];
}
