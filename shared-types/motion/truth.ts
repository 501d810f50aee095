import { hipClosing, kneeFlexion } from './angles.ts';
import { distanceToBox, handPoints, insideOutline, least, liftOff, soleHeight, touchDown } from './measure.ts';
import { type Motion, momentOf } from './motion.ts';
import { type Pose, SIDES } from './pose.ts';
import {
  CONTACT_ALLOWANCE,
  FAULTS,
  type FaultCode,
  type MarginUnit,
  type SheetNumbers,
  unitOf,
} from './specification.ts';

/** A hand this near to the box touches it, m. */
const TOUCH = 0.0015;

export interface FaultTruth {
  /** Signed, positive while the standard is met; null where the rep gives no occasion for the fault. */
  readonly margin: number | null;
  readonly unit: MarginUnit;
  readonly met: boolean;
}

export type Truth = Partial<Readonly<Record<FaultCode, FaultTruth>>>;

/**
 * What really happened in a rep, measured on the motion. README defines each margin.
 * @returns one entry for every code of the movement's sheet
 */
export function truth(motion: Motion, sheet: SheetNumbers): Truth {
  const movement = motion.specification.movement;
  const measured = MEASURES[movement](motion, sheet);
  const result: Partial<Record<FaultCode, FaultTruth>> = {};
  for (const code of FAULTS[movement]) {
    const margin = measured[code] ?? null;
    const met = margin === null || margin >= -(sheet.tolerance[code] ?? 0);
    result[code] = { margin, unit: unitOf(movement, code), met };
  }
  return result;
}

export interface Verdict {
  readonly counted: boolean;
  /** Codes of the standards not met, in the sheet's order. */
  readonly faults: readonly FaultCode[];
}

/** The call that the truth deserves. */
export function verdict(found: Truth): Verdict {
  const faults = (Object.entries(found) as [FaultCode, FaultTruth][])
    .filter(([, fault]) => !fault.met)
    .map(([code]) => code);
  return { counted: faults.length === 0, faults };
}

type Measured = Partial<Record<FaultCode, number | null>>;
const MEASURES = { 'wall-throw': wallThrow, 'jump-burpee': jumpBurpee, 'box-jump-over': boxJumpOver } as const;

function when(motion: Motion, name: Parameters<typeof momentOf>[1]): number {
  const t = momentOf(motion, name);
  if (t === null) throw new Error(`the motion has no moment "${name}"`);
  return t;
}

function wallThrow(motion: Motion, sheet: SheetNumbers): Measured {
  const ready = when(motion, 'ready');
  const above = (pose: Pose): number => Math.max(...pose.legs.map((leg) => leg.hipCrease[1] - leg.kneeTop[1]));
  const deepest = least((t) => above(motion.at(t)), when(motion, 'descent'), when(motion, 'release'), 24);
  const bend = (pose: Pose): number =>
    Math.max(...SIDES.flatMap((side) => [kneeFlexion(pose, side), hipClosing(pose, side)]));
  const tallest = least((t) => bend(motion.at(t)), ready, when(motion, 'descent'), 6);
  const hit = motion.at(when(motion, 'wall-contact')).ball?.centre ?? [0, 0, 0];
  const taken = momentOf(motion, 'pick-up');
  const under = taken === null ? null : (motion.at(taken).ball?.centre[1] ?? 0) - sheet.ballRadius;
  return {
    depth: -100 * deepest.value,
    line: 100 * (hit[1] - sheet.lineHeight),
    aim: 100 * (sheet.targetWidth / 2 - Math.abs(hit[0])),
    stand: sheet.tallAllowance - tallest.value,
    bounce: under === null ? null : CONTACT_ALLOWANCE - 100 * under,
  };
}

function jumpBurpee(motion: Motion, sheet: SheetNumbers): Measured {
  const down = when(motion, 'hands-down');
  const begin = motion.at(0);
  const handsDown = motion.at(down);
  const feetIn = motion.at(when(motion, 'feet-in'));
  const foremostToe = (pose: Pose): number => Math.max(...pose.legs.map((leg) => leg.toe[2]));
  const fingertips = Math.max(...handsDown.arms.map((arm) => arm.fingertip[2]));
  const lowest = least((t) => motion.at(t).chest[1], down, when(motion, 'feet-in'), 20);
  const crouch = when(motion, 'crouch');
  const takeOff = when(motion, 'take-off');
  const landing = when(motion, 'landing');
  const middle = (takeOff + landing) / 2;
  const left = SIDES.map((side) => liftOff(motion.at, side, 0, crouch, middle));
  const met = SIDES.map((side) => touchDown(motion.at, side, 0, middle, motion.duration));
  const crept = Math.max(...SIDES.map((side) => handsDown.legs[side].toe[2] - begin.legs[side].toe[2]));
  const line = motion.scene.startLineZ;
  return {
    chest: CONTACT_ALLOWANCE - 100 * lowest.value,
    hands: sheet.handsAllowance - 100 * (fingertips - foremostToe(handsDown)),
    over: 100 * (fingertips - foremostToe(feetIn)),
    off: sheet.togetherAllowance - 1000 * spread(left),
    on: sheet.togetherAllowance - 1000 * spread(met),
    creep: sheet.creepAllowance - 100 * crept,
    start: line === null ? null : 100 * (line - foremostToe(begin)),
  };
}

function boxJumpOver(motion: Motion, sheet: SheetNumbers): Measured {
  const box = motion.scene.box;
  if (box === null) throw new Error('a box jump-over needs a box');
  const takeOff = when(motion, 'take-off');
  const onBox = when(motion, 'box-landing');
  const offBox = when(motion, 'box-take-off');
  const left = SIDES.map((side) => liftOff(motion.at, side, 0, when(motion, 'crouch'), (takeOff + onBox) / 2));
  const clearance = SIDES.map(
    (side) => least((t) => soleHeight(motion.at(t).legs[side]) - box.height, onBox, offBox, 16).value,
  );
  const closing = (pose: Pose): number => Math.min(...SIDES.map((side) => hipClosing(pose, side)));
  const open = least((t) => closing(motion.at(t)), onBox, offBox, 24);
  return {
    off: sheet.togetherAllowance - 1000 * spread(left),
    on: CONTACT_ALLOWANCE - 100 * Math.max(...clearance),
    tall: sheet.tallAsked ? sheet.tallAllowance - open.value : null,
    touch: handOnBox(motion, when(motion, 'crouch'), when(motion, 'turn')),
  };
}

/** Clearance of the nearest hand in cm, or, where one touches, how far it reaches over the box, negative. */
function handOnBox(motion: Motion, from: number, to: number): number {
  const box = motion.scene.box;
  if (box === null) return 0;
  const gap = (t: number): number =>
    Math.min(
      ...motion.at(t).arms.flatMap((arm) => handPoints(arm.wrist, arm.fingertip).map((p) => distanceToBox(p, box))),
    );
  const nearest = least(gap, from, to, 60);
  if (nearest.value > TOUCH) return 100 * nearest.value;
  const reach = (t: number): number =>
    -Math.max(
      0,
      ...motion.at(t).arms.flatMap((arm) =>
        handPoints(arm.wrist, arm.fingertip)
          .filter((p) => distanceToBox(p, box) <= TOUCH)
          .map((p) => insideOutline(p, box)),
      ),
    );
  return 100 * Math.min(-1e-4, least(reach, from, to, 120).value);
}

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
