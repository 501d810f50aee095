import {
  BasicShadowMap,
  DirectionalLight,
  Fog,
  type Group,
  HemisphereLight,
  type Mesh,
  PCFShadowMap,
  PerspectiveCamera,
  Scene,
  Vector3,
  WebGLRenderer,
} from 'three';
import type { Body } from '../../../../shared-types/motion/body.ts';
import type { Scene as Around } from '../../../../shared-types/motion/movement.ts';
import type { Pose } from '../../../../shared-types/motion/pose.ts';
import type { SheetNumbers } from '../../../../shared-types/motion/specification.ts';
import type { Vec3 } from '../../../../shared-types/motion/vector.ts';
import { type Eyes, verticalField } from '../viewpoint.ts';
import { AthleteModel } from './athlete.ts';
import type { Mark } from './margin-marks.ts';
import { MarkLines } from './mark-lines.ts';
import { appearanceOf, rooms } from './palette.ts';
import { isSoftware, type Quality, qualities } from './quality.ts';
import { ballModel, blob, disposeDeep, Surroundings } from './surroundings.ts';

export interface StageSetup {
  readonly body: Body;
  /** Which athlete it is: skin, hair, kit. */
  readonly look: number;
  readonly around: Around;
  readonly numbers: SheetNumbers;
  /** Whether the athlete goes on along the lane. */
  readonly travels: boolean;
}

export type RoomName = keyof typeof rooms;

/** A canvas without a way to draw in three dimensions. */
export class NoDrawing extends Error {}

/** The place where the figure is drawn: one canvas, one athlete, what stands around, and the judge's eyes. */
export class Stage {
  /** Whether the processor draws instead of a graphics chip. */
  readonly software: boolean;
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera(42, 1, 0.1, 60);
  private readonly sun = new DirectionalLight(0xffffff, 1.9);
  private readonly room: RoomName;
  private athlete: AthleteModel | null = null;
  private surroundings: Surroundings | null = null;
  private ball: Group | null = null;
  private readonly blobs: readonly Mesh[];
  private readonly marks = new MarkLines();
  private quality: Quality = 'full';
  private size = { width: 1, height: 1 };
  private field = 50;

  /** @throws NoDrawing where the browser gives no WebGL */
  constructor(canvas: HTMLCanvasElement, roomName: RoomName, wanted?: Quality) {
    this.room = roomName;
    const room = rooms[roomName];
    const first = wanted ?? (isSoftware(driverOf()) ? 'spare' : 'full');
    try {
      this.renderer = new WebGLRenderer({
        canvas,
        antialias: qualities[first].antialias,
        powerPreference: 'high-performance',
      });
    } catch (error) {
      throw new NoDrawing('this browser draws nothing in three dimensions', { cause: error });
    }
    this.software = isSoftware(driverOf());
    this.scene.background = room.background;
    this.scene.fog = new Fog(room.background, 11, 26);
    this.scene.add(new HemisphereLight(0xffffff, room.floor, 1.9));
    this.sun.shadow.camera.left = this.sun.shadow.camera.bottom = -2.4;
    this.sun.shadow.camera.right = this.sun.shadow.camera.top = 2.4;
    this.sun.shadow.camera.far = 14;
    this.sun.shadow.bias = -0.0006;
    this.sun.shadow.normalBias = 0.012;
    this.scene.add(this.sun, this.sun.target);
    this.blobs = Array.from({ length: 4 }, blob);
    this.scene.add(...this.blobs, this.marks.group);
    this.use(first);
  }

  /** Puts another athlete there, and what stands around: the canvas and its drawing go on. */
  dress(setup: StageSetup): void {
    this.undress();
    const room = rooms[this.room];
    this.athlete = new AthleteModel(setup.body, appearanceOf(setup.look));
    this.surroundings = new Surroundings(setup.around, setup.numbers, room, setup.travels);
    this.ball = setup.around.wallZ === null ? null : ballModel(setup.numbers.ballRadius, room);
    this.scene.add(this.athlete.group, this.surroundings.group);
    if (this.ball !== null) this.scene.add(this.ball);
  }

  private undress(): void {
    for (const item of [this.athlete?.group, this.surroundings?.group, this.ball]) if (item) this.scene.remove(item);
    this.athlete?.dispose();
    this.surroundings?.dispose();
    if (this.ball !== null) disposeDeep(this.ball);
    this.athlete = null;
    this.surroundings = null;
    this.ball = null;
  }

  use(quality: Quality): void {
    this.quality = quality;
    const { shadow, pixelRatio } = qualities[quality];
    this.renderer.setPixelRatio(Math.min(window.devicePixelRatio, pixelRatio));
    this.renderer.shadowMap.enabled = shadow > 0;
    this.renderer.shadowMap.type = quality === 'full' ? PCFShadowMap : BasicShadowMap;
    this.sun.castShadow = shadow > 0;
    if (shadow > 0) {
      this.sun.shadow.mapSize.set(shadow, shadow);
      this.sun.shadow.map?.dispose();
      this.sun.shadow.map = null;
    }
    for (const mesh of this.blobs) mesh.visible = shadow === 0;
    this.renderer.setSize(this.size.width, this.size.height, false);
  }

  resize(width: number, height: number): void {
    this.size = { width: Math.max(1, width), height: Math.max(1, height) };
    this.camera.aspect = this.size.width / this.size.height;
    this.camera.fov = verticalField(this.field, this.camera.aspect);
    this.camera.updateProjectionMatrix();
    this.renderer.setSize(this.size.width, this.size.height, false);
  }

  /** How much is seen, degrees from top to bottom on a canvas that is not narrow. */
  setField(degrees: number): void {
    if (this.field === degrees) return;
    this.field = degrees;
    this.resize(this.size.width, this.size.height);
  }

  show(pose: Pose, eyes: Eyes): void {
    this.athlete?.follow(pose);
    if (this.ball !== null && pose.ball !== null) this.ball.position.set(...pose.ball.centre);
    this.camera.position.set(...eyes.at);
    this.camera.lookAt(...eyes.towards);
    const [x, , z] = pose.pelvis;
    this.sun.position.set(x + 2.2, 6.5, z - 2.6);
    this.sun.target.position.set(x, 0.8, z + 0.1);
    if (qualities[this.quality].shadow === 0) this.layBlobs(pose);
  }

  private layBlobs(pose: Pose): void {
    const discs: readonly (readonly [at: Vec3, radius: number])[] = [
      [mean(pose.legs[0].heel, pose.legs[0].toe), 0.17],
      [mean(pose.legs[1].heel, pose.legs[1].toe), 0.17],
      [mean(pose.pelvis, pose.neckBase), 0.3],
      [pose.ball?.centre ?? pose.headTop, pose.ball === null ? 0.14 : 0.17],
    ];
    for (const [i, [at, radius]] of discs.entries()) {
      const mesh = this.blobs[i];
      if (mesh === undefined) continue;
      // Wider and fainter with height, as a shadow under a broad light is.
      const high = Math.max(0, at[1]);
      const size = radius * (1 + 0.5 * high);
      mesh.position.set(at[0], 0.006 + 0.001 * i, at[2]);
      mesh.scale.set(size, 1, size);
      const { material } = mesh;
      if (!Array.isArray(material)) material.opacity = 0.34 / (1 + 3 * high);
    }
  }

  /** Draws marks into the picture, or takes them away. */
  setMarks(marks: readonly Mark[]): void {
    this.marks.set(marks, this.room);
  }

  render(): void {
    this.renderer.render(this.scene, this.camera);
  }

  /** Where a point of the world is on the canvas, as shares from its top left; null where it is behind the eyes. */
  project(point: Vec3): { readonly x: number; readonly y: number } | null {
    const at = new Vector3(...point).project(this.camera);
    return at.z > 1 ? null : { x: (at.x + 1) / 2, y: (1 - at.y) / 2 };
  }

  dispose(): void {
    this.undress();
    this.marks.dispose();
    this.sun.shadow.map?.dispose();
    this.renderer.dispose();
    this.renderer.forceContextLoss();
  }
}

const mean = (one: Vec3, other: Vec3): Vec3 => [
  (one[0] + other[0]) / 2,
  Math.min(one[1], other[1]),
  (one[2] + other[2]) / 2,
];

let driver: string | undefined;

/** What the graphics driver calls itself; empty where it does not say. Asked once, on a canvas of its own. */
function driverOf(): string {
  if (driver !== undefined) return driver;
  const context = document.createElement('canvas').getContext('webgl2');
  const info = context?.getExtension('WEBGL_debug_renderer_info');
  driver = context && info ? String(context.getParameter(info.UNMASKED_RENDERER_WEBGL)) : '';
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return driver;
}
