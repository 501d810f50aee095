import type { Body } from './body.ts';
import type { FootSpan } from './choreography.ts';
import { stepTo } from './foot-path.ts';
import { type Side, signOf } from './pose.ts';
import type { Key } from './smooth.ts';
import type { Stance } from './stance.ts';
import { radians, type Vec3 } from './vector.ts';

/** A half turn on the spot in four small steps, as people turn round without hurry. */
export interface HalfTurn {
  readonly from: number;
  readonly to: number;
  /** +1 to the left. */
  readonly direction: 1 | -1;
  readonly centreZ: number;
}

/** Share of the turn's time and of its angle (degrees) at which each step begins, ends and points. */
const STEPS = [
  { leads: true, begin: 0, end: 0.25, angle: 72 },
  { leads: false, begin: 0.25, end: 0.5, angle: 126 },
  { leads: true, begin: 0.5, end: 0.75, angle: 180 },
  { leads: false, begin: 0.75, end: 1, angle: 180 },
] as const;

/** Forefoot of a foot that stands about the centre at a given angle (radians) of the body. */
function place(body: Body, stance: Stance, turn: HalfTurn, side: Side, angle: number): Vec3 {
  const out = signOf(side) * stance.halfWidth;
  const ahead = 0.22 * body.footLength * Math.cos(stance.toesOut);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [out * c + ahead * s, 0, turn.centreZ - out * s + ahead * c];
}

/** Spans of one foot through the turn, and keys of its direction (radians). */
export function turningFoot(
  body: Body,
  stance: Stance,
  turn: HalfTurn,
  side: Side,
): { spans: FootSpan[]; keys: Key[] } {
  const lead: Side = turn.direction === 1 ? 0 : 1;
  const T = turn.to - turn.from;
  const out = signOf(side) * stance.toesOut;
  const spans: FootSpan[] = [];
  const keys: Key[] = [];
  let at = place(body, stance, turn, side, 0);
  let angle = 0;
  let since = turn.from;
  for (const step of STEPS.filter((item) => item.leads === (side === lead))) {
    const next = turn.direction * radians(step.angle);
    const to = place(body, stance, turn, side, next);
    const begin = turn.from + step.begin * T;
    const end = turn.from + step.end * T;
    spans.push({ kind: 'planted', from: since, to: begin, at }, stepTo(begin, end, at, to, 0.045));
    keys.push({ t: begin, x: angle + out, v: 0, a: 0 }, { t: end, x: next + out, v: 0, a: 0 });
    at = to;
    angle = next;
    since = end;
  }
  spans.push({ kind: 'planted', from: since, to: turn.to + 1, at });
  return { spans, keys };
}

/** Keys of the body's direction through the turn; the head goes before, the hips follow the feet. */
export function turningBody(turn: HalfTurn, ahead: number): Key[] {
  const T = turn.to - turn.from;
  const at = (share: number, angle: number): Key => ({ t: turn.from + share * T, x: turn.direction * radians(angle) });
  return [
    { ...at(0.02, 0), v: 0, a: 0 },
    at(0.27, 40 + ahead),
    at(0.52, 100 + ahead),
    at(0.77, 152 + 0.6 * ahead),
    { ...at(1, 180), v: 0, a: 0 },
  ];
}
