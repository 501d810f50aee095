import { BoxGeometry, Group, Mesh, MeshBasicMaterial, SphereGeometry, Vector3 } from 'three';
import type { Vec3 } from '../../../../shared-types/motion/vector.ts';
import type { Mark, MarkLine } from './margin-marks.ts';

const colours = {
  paper: { guide: 0x0b3d5c, met: 0x005f96, broken: 0xd04a00 },
  hall: { guide: 0xf4f1e8, met: 0x8fd3ff, broken: 0xffb733 },
} as const;
const thickness = { guide: 0.006, span: 0.014 } as const;

/** Straight lines in the picture, over everything else. */
export class MarkLines {
  readonly group = new Group();
  private readonly rod = new BoxGeometry(1, 1, 1);
  private readonly knob = new SphereGeometry(1, 12, 8);
  private readonly materials: MeshBasicMaterial[] = [];

  constructor() {
    this.group.renderOrder = 10;
  }

  set(marks: readonly Mark[], room: 'paper' | 'hall'): void {
    this.clear();
    for (const mark of marks) {
      for (const line of mark.guides) this.line(line, this.paint(colours[room].guide, 0.85), thickness.guide);
      const span = this.paint(mark.met ? colours[room].met : colours[room].broken, 1);
      for (const line of mark.spans) {
        this.line(line, span, thickness.span);
        for (const end of line) this.end(end, span);
      }
    }
  }

  private paint(colour: number, opacity: number): MeshBasicMaterial {
    const made = new MeshBasicMaterial({ color: colour, opacity, transparent: true, depthTest: false, fog: false });
    this.materials.push(made);
    return made;
  }

  private line([from, to]: MarkLine, material: MeshBasicMaterial, thick: number): void {
    const mesh = new Mesh(this.rod, material);
    const [a, b] = [new Vector3(...from), new Vector3(...to)];
    mesh.position.copy(a).add(b).multiplyScalar(0.5);
    mesh.scale.set(thick, thick, Math.max(0.002, a.distanceTo(b)));
    mesh.lookAt(b.lengthSq() === a.lengthSq() && a.equals(b) ? b.clone().setY(b.y + 1) : b);
    mesh.renderOrder = 10;
    this.group.add(mesh);
  }

  private end(at: Vec3, material: MeshBasicMaterial): void {
    const mesh = new Mesh(this.knob, material);
    mesh.position.set(...at);
    mesh.scale.setScalar(thickness.span * 1.1);
    mesh.renderOrder = 11;
    this.group.add(mesh);
  }

  private clear(): void {
    this.group.clear();
    for (const material of this.materials) material.dispose();
    this.materials.length = 0;
  }

  dispose(): void {
    this.clear();
    this.rod.dispose();
    this.knob.dispose();
  }
}
