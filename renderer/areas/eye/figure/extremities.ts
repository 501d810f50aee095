import { type BufferGeometry, type Color, Matrix4, SphereGeometry } from 'three';
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import type { Body } from '../../../../shared-types/motion/body.ts';
import type { Appearance } from './palette.ts';
import { between, part, type Section, Skin } from './skin.ts';

/** Parts joined into one, so that each is drawn in one go. Throws where they do not fit together, which is our mistake. */
function joined(parts: readonly BufferGeometry[]): BufferGeometry {
  const whole = mergeGeometries([...parts]);
  if (whole === null) throw new Error('the parts of a figure do not fit together');
  for (const geometry of parts) geometry.dispose();
  return whole;
}

function placed(geometry: BufferGeometry, x: number, y: number, z: number, turnZ = 0, turnX = 0): BufferGeometry {
  const turn = new Matrix4().makeRotationZ(turnZ).multiply(new Matrix4().makeRotationX(turnX));
  return geometry.applyMatrix4(turn).translate(x, y, z);
}

/**
 * A hand that hangs from the wrist: fingers down -y, palm towards +z, thumb towards +x.
 * @param side +1 keeps the thumb at +x, -1 puts it at -x
 */
export function hand(body: Body, skin: Color, side: 1 | -1): BufferGeometry {
  const L = body.hand;
  const style = { colour: () => skin, rings: 8, spokes: 8 };
  const depth = Math.min(body.flesh.hand, 0.085 * L);
  const breadth = 0.215 * L;
  const palm: readonly Section[] = [
    [-0.06, 0, 0],
    [0, 0.62 * breadth, 1.05 * depth],
    [0.25, 0.95 * breadth, 1.15 * depth],
    [0.5, breadth, depth],
    [0.56, 0.9 * breadth, 0.8 * depth],
    [0.6, 0, 0],
  ];
  const finger: readonly Section[] = [
    [0, 0, 0],
    [0.06, 1, 1],
    [0.8, 0.86, 0.84],
    [0.96, 0.6, 0.6],
    [1, 0, 0],
  ];
  const oneFinger = (length: number, thick: number): BufferGeometry =>
    part(
      length,
      finger.map(([along, w, d]): Section => [along, w * thick, d * thick]),
      style,
    );
  const thick = 0.052 * L;
  const fingers = [-1.5, -0.5, 0.5, 1.5].map((place, i) => {
    const long = [0.4, 0.46, 0.47, 0.43][i] ?? 0.45;
    return placed(oneFinger(long * L, thick), side * place * 0.108 * L, -0.53 * L, 0, side * place * 0.05);
  });
  const thumb = placed(
    oneFinger(0.42 * L, 1.2 * thick),
    side * 0.75 * breadth,
    -0.16 * L,
    0.25 * depth,
    side * 0.62,
    -0.2,
  );
  return joined([part(L, palm, { ...style, square: 2.6 }), ...fingers, thumb]);
}

/** The shoe from heel to the balls of the toes: forward +z from the heel at the origin, sole on y = 0. */
export function shoeRear(body: Body, look: Appearance): BufferGeometry {
  const F = body.footLength;
  const tops: readonly Section[] = [
    [-0.07, 0.1 * F, 0.16 * F],
    [-0.05, 0.2 * F, 0.3 * F],
    [0.08, 0.235 * F, 0.44 * F],
    [0.3, 0.24 * F, 0.46 * F],
    [0.48, 0.25 * F, 0.36 * F],
    [0.74, 0.295 * F, 0.25 * F],
    [0.8, 0.28 * F, 0.2 * F],
  ];
  return shoe(tops, F, look);
}

/** The shoe from the balls of the toes on: origin at the balls. */
export function shoeToes(body: Body, look: Appearance): BufferGeometry {
  const F = body.footLength;
  const tops: readonly Section[] = [
    [-0.1, 0.28 * F, 0.2 * F],
    [-0.02, 0.3 * F, 0.25 * F],
    [0.08, 0.295 * F, 0.22 * F],
    [0.18, 0.25 * F, 0.175 * F],
    [0.26, 0.16 * F, 0.13 * F],
    [0.285, 0.06 * F, 0.09 * F],
  ];
  return shoe(tops, F, look);
}

/** Widths are full; a section's depth is the height of the upper there. */
function shoe(tops: readonly Section[], F: number, look: Appearance): BufferGeometry {
  const sole = 0.09 * F;
  const layer = (bottom: number, top: (height: number) => number, widen: number, colour: Color): BufferGeometry => {
    const [first, last] = [tops[0]?.[0] ?? 0, tops.at(-1)?.[0] ?? 1];
    const rings = 12;
    const skin = new Skin(rings + 2, 14);
    for (let i = 0; i < rings + 2; i += 1) {
      const share = Math.min(1, Math.max(0, (i - 1) / (rings - 1)));
      const along = first + (last - first) * share;
      const closed = i === 0 || i === rings + 1 ? 0.02 : 1;
      const { width, depth } = between(tops, along);
      const height = Math.max(0.01 * F, top(depth) - bottom);
      skin.set(i, {
        centre: [0, bottom + height / 2, along * F],
        a: [(width / 2) * widen * closed * 1.0, 0, 0],
        b: [0, (height / 2) * closed, 0],
        square: 3,
      });
      skin.paint(i, colour);
    }
    skin.finish();
    return skin.geometry;
  };
  return joined([layer(0.03 * F, (height) => height, 1.62, look.shoes), layer(0, () => sole, 1.7, look.sole)]);
}

/** Head with face and hair: chin at the origin, crown up +y, face towards +z. */
export function head(body: Body, look: Appearance): BufferGeometry {
  const [L, R] = [body.head, body.flesh.head];
  const skull: readonly Section[] = [
    [-0.05, 0, 0, 0.3],
    [-0.03, 0.2, 0.22, 0.3],
    [0.06, 0.44, 0.55, 0.22],
    [0.22, 0.69, 0.84, 0.06],
    [0.42, 0.82, 0.98, 0],
    [0.62, 0.88, 1.05, -0.05],
    [0.8, 0.82, 0.98, -0.08],
    [0.93, 0.5, 0.64, -0.1],
    [0.985, 0.22, 0.28, -0.1],
    [1, 0, 0, -0.1],
  ];
  const parts = [upright(L, R, skull, 1, 0, () => look.skin)];
  if (look.hairStyle !== 'shaved') {
    const hair = skull.filter(([along]) => along >= 0.4);
    const low: Section = [0.3, 0.62, 0.7, -0.2];
    parts.push(
      upright(
        L,
        R,
        [low, ...hair.map(([u, w, d, a]): Section => [u * 1.02, w * 1.07, d * 1.03, (a ?? 0) - 0.08])],
        1,
        0.42,
        () => look.hair,
      ),
    );
  }
  if (look.hairStyle === 'tied') parts.push(ball(0.42 * R, look.hair, 0, 0.72 * L, -1.28 * R));
  const dark = look.hair.clone().multiplyScalar(0.4);
  for (const side of [-1, 1]) {
    parts.push(ball(0.085 * R, dark, side * 0.33 * R, 0.5 * L, 0.9 * R));
    parts.push(ball(0.17 * R, look.skin, side * 0.86 * R, 0.45 * L, -0.05 * R));
  }
  parts.push(ball(0.15 * R, look.skin, 0, 0.37 * L, 1.0 * R));
  return joined(parts);
}

function ball(radius: number, colour: Color, x: number, y: number, z: number): BufferGeometry {
  const sphere = new SphereGeometry(radius, 10, 8).translate(x, y, z);
  sphere.deleteAttribute('uv');
  const count = sphere.getAttribute('position').count;
  const painted = new Skin(1, count);
  painted.paint(0, colour);
  sphere.setAttribute('color', painted.geometry.getAttribute('color'));
  return sphere;
}

/** Rings stacked up +y; `tilt` raises each ring's front, as a hairline rises over the forehead. */
function upright(
  L: number,
  R: number,
  sections: readonly Section[],
  grow: number,
  tilt: number,
  colour: () => Color,
): BufferGeometry {
  const [first, last] = [sections[0]?.[0] ?? 0, sections.at(-1)?.[0] ?? 1];
  const rings = 16;
  const skin = new Skin(rings, 16);
  for (let i = 0; i < rings; i += 1) {
    const along = first + ((last - first) * (1 - Math.cos((Math.PI * i) / (rings - 1)))) / 2;
    const { width, depth, ahead } = between(sections, along);
    const slope = tilt * Math.max(0, 1 - (along - first) / (0.75 * (last - first)));
    skin.set(i, {
      centre: [0, along * L, ahead * R],
      a: [-width * R * grow, 0, 0],
      b: [0, slope * depth * R, depth * R * grow],
    });
    skin.paint(i, colour());
  }
  skin.finish();
  return skin.geometry;
}
