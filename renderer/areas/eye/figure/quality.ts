/** How much is drawn. Timing never depends on it: a pose is always that of the clock. */
export type Quality = 'full' | 'plain' | 'spare' | 'coarse';

export interface QualitySettings {
  /** Side of the shadow's picture in pixels; 0 draws soft discs under the figure instead. */
  readonly shadow: number;
  readonly antialias: boolean;
  /** Most device pixels a CSS pixel. */
  readonly pixelRatio: number;
}

export const qualities: Readonly<Record<Quality, QualitySettings>> = {
  full: { shadow: 1_024, antialias: true, pixelRatio: 2 },
  plain: { shadow: 512, antialias: true, pixelRatio: 1 },
  spare: { shadow: 0, antialias: false, pixelRatio: 0.75 },
  coarse: { shadow: 0, antialias: false, pixelRatio: 0.5 },
};

/** Whether a graphics driver names itself as one that draws on the processor. */
export function isSoftware(renderer: string): boolean {
  return /swiftshader|llvmpipe|softpipe|software|basic render/i.test(renderer);
}

const order: readonly Quality[] = ['full', 'plain', 'spare', 'coarse'];

/**
 * A frame longer than this, in milliseconds, is late: one and a half frames at 60 a second. Points are given up only where
 * the picture would jump otherwise.
 */
const late: Readonly<Record<Quality, number>> = { full: 25, plain: 25, spare: 45, coarse: Number.POSITIVE_INFINITY };
const WINDOW = 45;

/** Watches the time between frames and says when less should be drawn; never more again, so that nothing flickers. */
export class QualityWatch {
  quality: Quality;
  private readonly times: number[] = [];
  private skip = 5;

  constructor(first: Quality) {
    this.quality = first;
  }

  /** @param milliseconds since the frame before. @returns true where the quality was just lowered */
  frame(milliseconds: number): boolean {
    // The first frames build shaders; a hidden page has pauses of seconds.
    if (this.skip > 0 || milliseconds > 1_000) {
      this.skip = Math.max(0, this.skip - 1);
      return false;
    }
    this.times.push(milliseconds);
    if (this.times.length < WINDOW) return false;
    const count = this.times.filter((time) => time > late[this.quality]).length;
    this.times.length = 0;
    const next = order[order.indexOf(this.quality) + 1];
    if (count * 3 < WINDOW || next === undefined) return false;
    this.quality = next;
    this.skip = 5;
    return true;
  }
}
