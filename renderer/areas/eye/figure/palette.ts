import { Color } from 'three';
import { mixSeed, random } from '../../../../shared-types/motion/random.ts';

/** How one athlete looks: drawn colours only, nothing of it changes the motion. */
export interface Appearance {
  readonly skin: Color;
  readonly hair: Color;
  readonly hairStyle: 'short' | 'tied' | 'shaved';
  readonly top: Color;
  readonly sleeves: boolean;
  readonly shorts: Color;
  readonly socks: Color;
  readonly shoes: Color;
  readonly sole: Color;
  /** Hips against shoulders, as factors around 1. */
  readonly hips: number;
  readonly shoulders: number;
}

/** From pale to dark; our own mixtures. */
const skins = ['#f1cdb4', '#e3b190', '#cf9a74', '#b07a52', '#8a5a3a', '#653f2a', '#4a2e20'];
const hairs = ['#1d1815', '#3a2619', '#5c3b22', '#8a5f33', '#c4a06a', '#7a7672'];
/** Top and shorts are of different lightness, so that the fold of the hip can be seen. */
const kits: readonly (readonly [top: string, shorts: string])[] = [
  ['#e8e4da', '#24303f'],
  ['#3f6f8f', '#1c2228'],
  ['#d9a441', '#2b2f3a'],
  ['#7d3f5c', '#d9d4c7'],
  ['#2f3b33', '#c9b48a'],
  ['#5a8f7b', '#20262c'],
  ['#b9c4cc', '#4a2c3d'],
];
const shoes = ['#f4f1e8', '#2a2d31', '#c8553d', '#3d7ea6', '#d8c24a'];

/** The appearance that belongs to a seed: the same seed is the same athlete. */
export function appearanceOf(seed: number): Appearance {
  const draw = random(mixSeed(seed, 4_711));
  const pick = <T>(list: readonly [T, ...T[]] | readonly T[], fallback: T): T =>
    list[Math.floor(draw.uniform() * list.length)] ?? fallback;
  const skin = pick(skins, '#b07a52');
  const hair = pick(hairs, '#1d1815');
  const hairStyle = pick<Appearance['hairStyle']>(['short', 'tied', 'short', 'shaved'], 'short');
  const [top, shorts] = pick(kits, ['#e8e4da', '#24303f'] as const);
  const wide = draw.uniform();
  return {
    skin: new Color(skin),
    hair: new Color(hair),
    hairStyle,
    top: new Color(top),
    sleeves: draw.uniform() < 0.6,
    shorts: new Color(shorts),
    socks: new Color(draw.uniform() < 0.5 ? '#f2efe6' : '#2a2d31'),
    shoes: new Color(pick(shoes, '#f4f1e8')),
    sole: new Color('#e9e5d8'),
    hips: 0.96 + 0.1 * wide,
    shoulders: 1.03 - 0.08 * wide,
  };
}

/** The hall around the athlete. */
export interface Room {
  readonly background: Color;
  readonly floor: Color;
  readonly floorLine: Color;
  readonly lane: Color;
  readonly wall: Color;
  readonly target: Color;
  readonly line: Color;
  readonly box: Color;
  readonly boxEdge: Color;
  readonly ball: Color;
  readonly ballSeam: Color;
}

const of = (room: Readonly<Record<keyof Room, string>>): Room => ({
  background: new Color(room.background),
  floor: new Color(room.floor),
  floorLine: new Color(room.floorLine),
  lane: new Color(room.lane),
  wall: new Color(room.wall),
  target: new Color(room.target),
  line: new Color(room.line),
  box: new Color(room.box),
  boxEdge: new Color(room.boxEdge),
  ball: new Color(room.ball),
  ballSeam: new Color(room.ballSeam),
});

/** A bright hall for the light look, a dimmer one for the dark look: the figure reads the same in both. */
export const rooms: Readonly<Record<'paper' | 'hall', Room>> = {
  paper: of({
    background: '#dcd8cc',
    floor: '#b5b0a3',
    floorLine: '#a29d90',
    lane: '#f6f3e8',
    wall: '#cfcabd',
    target: '#bdb7a8',
    line: '#a34500',
    box: '#c79d6c',
    boxEdge: '#8d683d',
    ball: '#33404d',
    ballSeam: '#8f9ba6',
  }),
  hall: of({
    background: '#343b45',
    floor: '#5a616a',
    floorLine: '#4d535b',
    lane: '#d8d4c8',
    wall: '#767c84',
    target: '#868c94',
    line: '#e69f00',
    box: '#b58a5a',
    boxEdge: '#7c5a34',
    ball: '#20262d',
    ballSeam: '#7c8894',
  }),
};
