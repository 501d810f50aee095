import type { BufferGeometry, Color } from 'three';
import type { Body } from '../../../../shared-types/motion/body.ts';
import type { Appearance } from './palette.ts';
import { part, type Section } from './skin.ts';

/** The rigid parts of arms and legs, each hanging from its joint down -y, its front at +z. Metres; shapes are our own. */
export interface LimbParts {
  readonly thigh: BufferGeometry;
  readonly shortsLeg: BufferGeometry;
  readonly shank: BufferGeometry;
  readonly upperArm: BufferGeometry;
  readonly sleeve: BufferGeometry | null;
  readonly forearm: BufferGeometry;
}

const plain = (colour: Color) => ({ colour: () => colour });

export function limbParts(body: Body, look: Appearance): LimbParts {
  const f = body.flesh;
  const [T, K, C, A, U, E, W] = [f.thigh, f.knee, f.calf, f.ankle, f.upperArm, f.elbow, f.wrist];
  const thigh: readonly Section[] = [
    [-0.16, 0, 0],
    [-0.1, 0.7 * T, 0.62 * T],
    [0, 0.98 * T, 0.9 * T, -0.04 * T],
    [0.2, 1.02 * T, 1.0 * T, 0.04 * T],
    [0.5, 0.88 * T, 0.92 * T, 0.06 * T],
    [0.8, 1.06 * K, 1.08 * K, 0.03 * K],
    [1, 0.98 * K, K],
    [1.07, 0.66 * K, 0.7 * K],
    [1.1, 0, 0],
  ];
  const shortsEnd = 0.56;
  const shortsLeg: readonly Section[] = [
    [-0.17, 0, 0],
    [-0.1, 0.8 * T, 0.7 * T],
    [0, 1.06 * T, 0.98 * T, -0.02 * T],
    [0.25, 1.13 * T, 1.1 * T, 0.04 * T],
    [shortsEnd, 1.12 * T, 1.14 * T, 0.04 * T],
    [shortsEnd + 0.005, 0.86 * T, 0.9 * T, 0.04 * T],
    [shortsEnd + 0.01, 0, 0],
  ];
  const shank: readonly Section[] = [
    [-0.11, 0, 0],
    [-0.07, 0.66 * K, 0.66 * K],
    [0, 0.97 * K, 0.98 * K],
    [0.09, 0.94 * K, K, 0.02 * K],
    [0.28, 1.12 * C, 1.22 * C, -0.3 * C],
    [0.5, 0.94 * C, 1.04 * C, -0.22 * C],
    [0.8, 1.02 * A, 1.14 * A, -0.08 * A],
    [0.97, A, 1.1 * A],
    [1.06, 0.7 * A, 0.8 * A],
    [1.08, 0, 0],
  ];
  const upperArm: readonly Section[] = [
    [-0.2, 0, 0],
    [-0.16, 0.7 * U, 0.75 * U],
    [-0.02, 1.12 * U, 1.22 * U],
    [0.18, 1.12 * U, 1.22 * U],
    [0.5, 0.92 * U, 1.1 * U, 0.06 * U],
    [0.85, 0.98 * E, 1.02 * E],
    [1, 0.96 * E, E],
    [1.09, 0.6 * E, 0.6 * E],
    [1.12, 0, 0],
  ];
  const sleeve: readonly Section[] = [
    [-0.23, 0, 0],
    [-0.18, 0.78 * U, 0.82 * U],
    [-0.02, 1.24 * U, 1.34 * U],
    [0.2, 1.27 * U, 1.38 * U],
    [0.44, 1.24 * U, 1.4 * U],
    [0.445, 0.95 * U, 1.1 * U],
    [0.45, 0, 0],
  ];
  const forearm: readonly Section[] = [
    [-0.12, 0, 0],
    [-0.09, 0.6 * E, 0.6 * E],
    [0, 0.96 * E, 0.98 * E],
    [0.24, 1.1 * E, 1.04 * E],
    [0.6, 0.86 * E, 0.78 * E],
    [0.92, 1.04 * W, 0.84 * W],
    [1.04, 0.94 * W, 0.78 * W],
    [1.1, 0, 0],
  ];
  return {
    thigh: part(body.thigh, thigh, plain(look.skin)),
    shortsLeg: part(body.thigh, shortsLeg, plain(look.shorts)),
    shank: part(body.shank, shank, {
      colour: (along) => (along > 0.84 ? look.socks : look.skin),
      seams: [0.84],
    }),
    upperArm: part(body.upperArm, upperArm, plain(look.skin)),
    sleeve: look.sleeves ? part(body.upperArm, sleeve, plain(look.top)) : null,
    forearm: part(body.forearm, forearm, plain(look.skin)),
  };
}
