import { BufferAttribute, BufferGeometry, type Color } from 'three';
import type { Vec3 } from '../../../../shared-types/motion/vector.ts';

/** One cross-section of a skin: its middle, two half axes, and how square it is (2 an ellipse, more a rounded box). */
export interface Ring {
  readonly centre: Vec3;
  readonly a: Vec3;
  readonly b: Vec3;
  readonly square?: number;
}

/**
 * A closed surface over cross-sections in a row, with normals of its own. Its rings can be set anew in every frame without
 * anything being allocated; set once it is a rigid part.
 */
export class Skin {
  readonly geometry = new BufferGeometry();
  private readonly rings: number;
  private readonly spokes: number;
  private readonly position: Float32Array;
  private readonly normal: Float32Array;
  private readonly colour: Float32Array;

  constructor(rings: number, spokes: number) {
    this.rings = rings;
    this.spokes = spokes;
    const count = rings * spokes;
    this.position = new Float32Array(count * 3);
    this.normal = new Float32Array(count * 3);
    this.colour = new Float32Array(count * 3).fill(1);
    const index: number[] = [];
    for (let i = 0; i + 1 < rings; i += 1) {
      for (let j = 0; j < spokes; j += 1) {
        const here = i * spokes + j;
        const beside = i * spokes + ((j + 1) % spokes);
        index.push(here, beside, here + spokes, beside, beside + spokes, here + spokes);
      }
    }
    this.geometry.setIndex(index);
    this.geometry.setAttribute('position', new BufferAttribute(this.position, 3));
    this.geometry.setAttribute('normal', new BufferAttribute(this.normal, 3));
    this.geometry.setAttribute('color', new BufferAttribute(this.colour, 3));
  }

  paint(ring: number, colour: Color): void {
    for (let j = 0; j < this.spokes; j += 1) {
      const at = (ring * this.spokes + j) * 3;
      this.colour[at] = colour.r;
      this.colour[at + 1] = colour.g;
      this.colour[at + 2] = colour.b;
    }
  }

  set(ring: number, { centre, a, b, square = 2 }: Ring): void {
    const power = 2 / square;
    for (let j = 0; j < this.spokes; j += 1) {
      const angle = (j / this.spokes) * 2 * Math.PI;
      const c = bent(Math.cos(angle), power);
      const s = bent(Math.sin(angle), power);
      const at = (ring * this.spokes + j) * 3;
      this.position[at] = centre[0] + a[0] * c + b[0] * s;
      this.position[at + 1] = centre[1] + a[1] * c + b[1] * s;
      this.position[at + 2] = centre[2] + a[2] * c + b[2] * s;
    }
  }

  /** Makes the normals of the rings as they stand. Call it after the last `set`. */
  finish(): void {
    const { position: p, normal: n, rings, spokes } = this;
    for (let i = 0; i < rings; i += 1) {
      const before = Math.max(0, i - 1) * spokes;
      const after = Math.min(rings - 1, i + 1) * spokes;
      for (let j = 0; j < spokes; j += 1) {
        const left = (i * spokes + ((j + 1) % spokes)) * 3;
        const right = (i * spokes + ((j + spokes - 1) % spokes)) * 3;
        const up = (after + j) * 3;
        const down = (before + j) * 3;
        const [ux, uy, uz] = [
          at(p, left) - at(p, right),
          at(p, left + 1) - at(p, right + 1),
          at(p, left + 2) - at(p, right + 2),
        ];
        const [vx, vy, vz] = [
          at(p, up) - at(p, down),
          at(p, up + 1) - at(p, down + 1),
          at(p, up + 2) - at(p, down + 2),
        ];
        const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
        const size = Math.hypot(x, y, z);
        const here = (i * spokes + j) * 3;
        if (size < 1e-12) {
          // A ring drawn to a point looks along the axis, outwards.
          const outwards = (i === 0 ? -1 : 1) / (Math.hypot(vx, vy, vz) || 1);
          n[here] = vx * outwards;
          n[here + 1] = vy * outwards;
          n[here + 2] = vz * outwards;
          continue;
        }
        n[here] = x / size;
        n[here + 1] = y / size;
        n[here + 2] = z / size;
      }
    }
    this.geometry.getAttribute('position').needsUpdate = true;
    this.geometry.getAttribute('normal').needsUpdate = true;
  }
}

function at(values: Float32Array, index: number): number {
  return values[index] ?? 0;
}

function bent(value: number, power: number): number {
  return power === 1 ? value : Math.sign(value) * Math.abs(value) ** power;
}

/** A point of a part's outline: where along its axis, half width, half depth, and how far it lies ahead of the axis. */
export type Section = readonly [along: number, width: number, depth: number, ahead?: number];

/** Sections between the given ones, on smooth curves that never overshoot (Fritsch & Carlson 1980 limits). */
export function between(sections: readonly Section[], along: number): { width: number; depth: number; ahead: number } {
  const xs = sections.map((section) => section[0]);
  const column = (k: 1 | 2 | 3): number =>
    monotone(
      xs,
      sections.map((section) => section[k] ?? 0),
      along,
    );
  return { width: column(1), depth: column(2), ahead: column(3) };
}

function monotone(xs: readonly number[], ys: readonly number[], x: number): number {
  const last = xs.length - 1;
  if (x <= (xs[0] ?? 0)) return ys[0] ?? 0;
  if (x >= (xs[last] ?? 0)) return ys[last] ?? 0;
  const i = Math.max(0, xs.findIndex((value) => value > x) - 1);
  const slope = (k: number): number => ((ys[k + 1] ?? 0) - (ys[k] ?? 0)) / ((xs[k + 1] ?? 0) - (xs[k] ?? 0));
  const tangent = (k: number): number => {
    if (k <= 0) return slope(0);
    if (k >= last) return slope(last - 1);
    const [one, other] = [slope(k - 1), slope(k)];
    return one * other <= 0 ? 0 : (2 * one * other) / (one + other);
  };
  const h = (xs[i + 1] ?? 0) - (xs[i] ?? 0);
  const t = (x - (xs[i] ?? 0)) / h;
  const [y0, y1, m0, m1] = [ys[i] ?? 0, ys[i + 1] ?? 0, tangent(i) * h, tangent(i + 1) * h];
  return (
    (2 * t ** 3 - 3 * t ** 2 + 1) * y0 +
    (t ** 3 - 2 * t ** 2 + t) * m0 +
    (-2 * t ** 3 + 3 * t ** 2) * y1 +
    (t ** 3 - t ** 2) * m1
  );
}

export interface PartStyle {
  /** The colour at a place along the part. */
  readonly colour: (along: number) => Color;
  /** Extra rings at these places, where the colour changes. */
  readonly seams?: readonly number[];
  readonly square?: number;
  readonly rings?: number;
  readonly spokes?: number;
}

/**
 * A rigid part that hangs from its origin down -y for `length` metres; x is its width, +z its front. `sections` begin and
 * end with no width, so that the part is closed and round at its ends.
 */
export function part(length: number, sections: readonly Section[], style: PartStyle): BufferGeometry {
  const { colour, seams = [], square = 2, rings = 18, spokes = 14 } = style;
  const [first, last] = [sections[0]?.[0] ?? 0, sections.at(-1)?.[0] ?? 1];
  // Denser at the ends, where the part is round.
  const places = Array.from(
    { length: rings },
    (_, i) => first + ((last - first) * (1 - Math.cos((Math.PI * i) / (rings - 1)))) / 2,
  );
  const all = [...places, ...seams.flatMap((seam) => [seam, seam + 1e-4])].toSorted((one, other) => one - other);
  const skin = new Skin(all.length, spokes);
  for (const [i, place] of all.entries()) {
    const { width, depth, ahead } = between(sections, place);
    skin.set(i, { centre: [0, -place * length, ahead], a: [width, 0, 0], b: [0, 0, depth], square });
    skin.paint(i, colour(place));
  }
  skin.finish();
  return skin.geometry;
}
