import { type BufferGeometry, Group, Matrix4, Mesh, MeshLambertMaterial } from 'three';
import type { Body } from '../../../../shared-types/motion/body.ts';
import { type Pose, SIDES, signOf } from '../../../../shared-types/motion/pose.ts';
import { acrossTo, along, cross, scale, subtract, unit, type Vec3 } from '../../../../shared-types/motion/vector.ts';
import { hand, head, shoeRear, shoeToes } from './extremities.ts';
import { limbParts } from './limbs.ts';
import type { Appearance } from './palette.ts';
import { part, type Section } from './skin.ts';
import { palmOf, Trunk } from './trunk.ts';

/** The athlete's body, put into any pose. */
export class AthleteModel {
  readonly group = new Group();
  private readonly trunk: Trunk;
  private readonly legs: readonly LegMeshes[];
  private readonly arms: readonly ArmMeshes[];
  private readonly head: Mesh;
  private readonly neck: Mesh;
  private readonly body: Body;
  private readonly material = new MeshLambertMaterial({ vertexColors: true });

  constructor(body: Body, look: Appearance) {
    this.body = body;
    const limbs = limbParts(body, look);
    const f = body.flesh;
    this.trunk = new Trunk(body, look);
    this.add(this.trunk.skin.geometry).frustumCulled = false;
    const [rear, toes] = [shoeRear(body, look), shoeToes(body, look)];
    this.legs = SIDES.map(() => ({
      thigh: this.add(limbs.thigh),
      shorts: this.add(limbs.shortsLeg),
      shank: this.add(limbs.shank),
      rear: this.add(rear),
      toes: this.add(toes),
    }));
    const yoke: readonly Section[] = [
      [-0.1, 0, 0],
      [0, f.neck * 1.15, f.neck * 1.3],
      [0.6, f.neck * 1.02, f.upperArm * 1.15],
      [1, f.upperArm * 1.02, f.upperArm * 1.12],
      [1.12, 0, 0],
    ];
    this.arms = SIDES.map((side) => ({
      yoke: this.add(part(1, yoke, { colour: () => look.top, rings: 10, spokes: 12 })),
      upper: this.add(limbs.upperArm),
      sleeve: limbs.sleeve === null ? null : this.add(limbs.sleeve),
      fore: this.add(limbs.forearm),
      hand: this.add(hand(body, look.skin, side === 0 ? 1 : -1)),
    }));
    this.head = this.add(head(body, look));
    const throat: readonly Section[] = [
      [-0.1, 0, 0],
      [0, f.neck, f.neck],
      [1, 0.92 * f.neck, 0.98 * f.neck],
      [1.1, 0, 0],
    ];
    this.neck = this.add(part(1, throat, { colour: () => look.skin, rings: 8, spokes: 12 }));
  }

  private add(geometry: BufferGeometry): Mesh {
    const mesh = new Mesh(geometry, this.material);
    mesh.castShadow = true;
    mesh.receiveShadow = true;
    mesh.matrixAutoUpdate = false;
    this.group.add(mesh);
    return mesh;
  }

  follow(pose: Pose): void {
    this.trunk.follow(pose);
    for (const side of SIDES) {
      this.followLeg(pose, side);
      this.followArm(pose, side);
    }
    const { up, forward, left } = pose.frames.head;
    place(this.head, pose.headBase, left, up, forward);
    const top = along(along(pose.headBase, up, 0.3 * this.body.head), forward, -0.012 * this.body.stature);
    hang(this.neck, top, pose.neckBase, forward, subtract(top, pose.neckBase));
  }

  private followLeg(pose: Pose, side: 0 | 1): void {
    const leg = pose.legs[side];
    const mesh = this.legs[side];
    if (mesh === undefined) return;
    const bone = unit(subtract(leg.knee, leg.hip));
    const front = acrossTo(subtract(leg.hipCrease, leg.hip), bone, pose.frames.pelvis.forward);
    hang(mesh.thigh, leg.hip, leg.knee, front);
    hang(mesh.shorts, leg.hip, leg.knee, front);
    const axis = cross(scale(bone, -1), front);
    const shin = unit(subtract(leg.ankle, leg.knee));
    hang(mesh.shank, leg.knee, leg.ankle, cross(axis, scale(shin, -1)));
    const sole = unit(subtract(leg.forefoot, leg.heel));
    const lift = subtract(leg.ankle, along(leg.forefoot, sole, -this.body.ankleToForefoot));
    const up = acrossTo(lift, sole, [0, 1, 0]);
    const across = cross(up, sole);
    place(mesh.rear, leg.heel, across, up, sole);
    const ahead = acrossTo(subtract(leg.toe, leg.forefoot), across, sole);
    place(mesh.toes, leg.forefoot, across, cross(ahead, across), ahead);
  }

  private followArm(pose: Pose, side: 0 | 1): void {
    const arm = pose.arms[side];
    const mesh = this.arms[side];
    if (mesh === undefined) return;
    const { chest } = pose.frames;
    const root = along(pose.neckBase, chest.up, -0.028 * this.body.stature);
    const inner = along(root, chest.left, signOf(side) * 0.16 * this.body.shoulderHalf);
    hang(mesh.yoke, inner, arm.shoulder, chest.forward, subtract(arm.shoulder, inner));
    const bone = unit(subtract(arm.elbow, arm.shoulder));
    const fore = unit(subtract(arm.wrist, arm.elbow));
    const front = acrossTo(fore, bone, acrossTo(chest.forward, bone, chest.up));
    hang(mesh.upper, arm.shoulder, arm.elbow, front);
    if (mesh.sleeve !== null) hang(mesh.sleeve, arm.shoulder, arm.elbow, front);
    const palm = palmOf(pose, side);
    const fingers = unit(subtract(arm.fingertip, arm.wrist));
    hang(mesh.fore, arm.elbow, arm.wrist, acrossTo(palm, fore, front));
    place(mesh.hand, arm.wrist, cross(scale(fingers, -1), palm), scale(fingers, -1), palm);
  }

  dispose(): void {
    for (const child of this.group.children) if (child instanceof Mesh) child.geometry.dispose();
    this.material.dispose();
  }
}

interface LegMeshes {
  readonly thigh: Mesh;
  readonly shorts: Mesh;
  readonly shank: Mesh;
  readonly rear: Mesh;
  readonly toes: Mesh;
}

interface ArmMeshes {
  readonly yoke: Mesh;
  readonly upper: Mesh;
  readonly sleeve: Mesh | null;
  readonly fore: Mesh;
  readonly hand: Mesh;
}

const matrix = new Matrix4();

/** Puts a part at a point with these axes. */
function place(mesh: Mesh, at: Vec3, x: Vec3, y: Vec3, z: Vec3): void {
  matrix.set(x[0], y[0], z[0], at[0], x[1], y[1], z[1], at[1], x[2], y[2], z[2], at[2], 0, 0, 0, 1);
  mesh.matrix.copy(matrix);
  mesh.matrixWorldNeedsUpdate = true;
}

/** Hangs a part between two joints, its front as near to `front` as may be; `span` stretches a part of length 1. */
function hang(mesh: Mesh, from: Vec3, to: Vec3, front: Vec3, span?: Vec3): void {
  const up = unit(subtract(from, to));
  const z = acrossTo(front, up, [0, 0, 1]);
  const stretch = span === undefined ? 1 : Math.hypot(...span);
  place(mesh, from, cross(up, z), scale(up, stretch), z);
}
