import {
  BoxGeometry,
  type BufferGeometry,
  CircleGeometry,
  type Color,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  PlaneGeometry,
  SphereGeometry,
  TorusGeometry,
} from 'three';
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import type { Scene as Around } from '../../../../shared-types/motion/movement.ts';
import type { SheetNumbers } from '../../../../shared-types/motion/specification.ts';
import type { Room } from './palette.ts';

/** How far the lane of a movement that travels is drawn, metres. */
const LANE_END = 160;
const LANE_HALF = 0.9;
const TILE_JOINT = 0.02;

/** What stands around the athlete, by the sheet's numbers: floor, lane, wall with target and line, box. */
export class Surroundings {
  readonly group = new Group();
  private readonly owned: (Material | { dispose(): void })[] = [];

  constructor(around: Around, numbers: SheetNumbers, room: Room, travels: boolean) {
    const end = travels ? LANE_END : 8;
    const floor = this.flat(60, end + 60, room.floor, 0);
    floor.position.z = end / 2 - 10;
    floor.receiveShadow = true;
    this.floorLines(end, room);
    if (travels) this.lane(around, end, room);
    if (around.wallZ !== null) this.wall(around.wallZ, numbers, room);
    if (around.box !== null) this.box(around.box, room);
  }

  private material(colour: Color, lit = true): MeshLambertMaterial | MeshBasicMaterial {
    const made = lit ? new MeshLambertMaterial({ color: colour }) : new MeshBasicMaterial({ color: colour });
    this.owned.push(made);
    return made;
  }

  /** A rectangle on the floor, `lift` millimetres above it so that lines do not flicker. */
  private flat(width: number, depth: number, colour: Color, lift: number): Mesh {
    const geometry = new PlaneGeometry(width, depth).rotateX(-Math.PI / 2);
    this.owned.push(geometry);
    const mesh = new Mesh(geometry, this.material(colour));
    mesh.position.y = lift / 1_000;
    mesh.receiveShadow = lift > 0;
    this.group.add(mesh);
    return mesh;
  }

  /** The joints between the floor's tiles, a metre apart: they let the eye measure. */
  private floorLines(end: number, room: Room): void {
    const strips: BufferGeometry[] = [];
    for (let x = -6; x <= 6; x += 1) {
      strips.push(new PlaneGeometry(TILE_JOINT, end + 16).rotateX(-Math.PI / 2).translate(x, 0, end / 2 - 4));
    }
    for (let z = -8; z <= end + 4; z += 1) {
      strips.push(new PlaneGeometry(12, TILE_JOINT).rotateX(-Math.PI / 2).translate(0, 0, z));
    }
    const whole = mergeGeometries(strips);
    for (const strip of strips) strip.dispose();
    this.owned.push(whole);
    const mesh = new Mesh(whole, this.material(room.floorLine, false));
    mesh.position.y = 0.002;
    this.group.add(mesh);
  }

  private lane(around: Around, end: number, room: Room): void {
    for (const side of [-1, 1]) {
      const edge = this.flat(0.05, end + 3, room.lane, 4);
      edge.position.x = side * LANE_HALF;
      edge.position.z = end / 2 - 1.5;
    }
    if (around.startLineZ === null) return;
    // The line's far edge is where the toes may not stand over.
    this.flat(2 * LANE_HALF, 0.05, room.line, 5).position.z = around.startLineZ - 0.025;
  }

  private wall(z: number, numbers: SheetNumbers, room: Room): void {
    const upright = (width: number, height: number, x: number, y: number, ahead: number, colour: Color): void => {
      const geometry = new PlaneGeometry(width, height).rotateY(Math.PI);
      this.owned.push(geometry);
      const mesh = new Mesh(geometry, this.material(colour));
      mesh.position.set(x, y, z - ahead / 1_000);
      mesh.receiveShadow = true;
      this.group.add(mesh);
    };
    const high = Math.max(4.2, numbers.lineHeight + 1.2);
    upright(7, high, 0, high / 2, -1, room.wall);
    upright(numbers.targetWidth, 0.9, 0, numbers.lineHeight + 0.1, 2, room.target);
    const tape = 0.03;
    upright(numbers.targetWidth + 0.6, tape, 0, numbers.lineHeight, 5, room.line);
    for (const side of [-1, 1])
      upright(tape, 0.9, (side * numbers.targetWidth) / 2, numbers.lineHeight + 0.1, 4, room.line);
  }

  private box(box: NonNullable<Around['box']>, room: Room): void {
    const geometry = new BoxGeometry(2 * box.halfWidth, box.height, 2 * box.halfDepth);
    const edges = new EdgesGeometry(geometry);
    const line = new LineBasicMaterial({ color: room.boxEdge });
    this.owned.push(geometry, edges, line);
    const mesh = new Mesh(geometry, this.material(room.box));
    mesh.castShadow = true;
    mesh.receiveShadow = true;
    const whole = new Group();
    whole.add(mesh, new LineSegments(edges, line));
    whole.position.set(0, box.height / 2, box.z);
    this.group.add(whole);
  }

  dispose(): void {
    for (const item of this.owned) item.dispose();
  }
}

/** The throwing ball with its seams. */
export function ballModel(radius: number, room: Room): Group {
  const whole = new Group();
  const skin = new Mesh(new SphereGeometry(radius, 28, 18), new MeshLambertMaterial({ color: room.ball }));
  skin.castShadow = true;
  const seam = new MeshLambertMaterial({ color: room.ballSeam });
  const rings = [0, Math.PI / 2].map((turn) => {
    const ring = new Mesh(new TorusGeometry(radius * 0.995, radius * 0.03, 6, 36), seam);
    ring.rotation.y = turn;
    return ring;
  });
  whole.add(skin, ...rings);
  return whole;
}

/** A soft dark disc on the floor, in place of a cast shadow where shadows cost too much. */
export function blob(): Mesh {
  const geometry = new CircleGeometry(1, 24).rotateX(-Math.PI / 2);
  const material = new MeshBasicMaterial({ color: 0x000000, transparent: true, opacity: 0.3, depthWrite: false });
  return new Mesh(geometry, material);
}

export function disposeDeep(group: Group): void {
  group.traverse((item) => {
    if (!(item instanceof Mesh || item instanceof LineSegments)) return;
    item.geometry.dispose();
    const materials: Material[] = Array.isArray(item.material) ? item.material : [item.material];
    for (const material of materials) material.dispose();
  });
}
