/**
 * One moment a smooth curve passes through. `v` (per second) and `a` (per second squared) may be left to the curve: ends
 * rest, turning points swing through, passing points keep going.
 */
export interface Key {
  readonly t: number;
  readonly x: number;
  readonly v?: number;
  readonly a?: number;
}

/**
 * A curve through keys: one quintic between neighbours, so value, velocity and acceleration are continuous everywhere.
 * Before the first key and after the last it holds still.
 */
export class Track {
  readonly first: number;
  readonly last: number;
  #under: Track | null = null;
  #top: Track | null = null;
  readonly #times: readonly number[];
  /** Six coefficients an interval, in the local time since its start. */
  readonly #terms: Float64Array;
  readonly #head: number;
  readonly #tail: number;

  constructor(keys: readonly Key[]) {
    const full = complete(keys);
    this.#times = full.map((key) => key.t);
    this.#terms = new Float64Array(Math.max(0, full.length - 1) * 6);
    const begin = full[0] ?? { t: 0, x: 0, v: 0, a: 0 };
    const end = full[full.length - 1] ?? begin;
    this.first = begin.t;
    this.last = end.t;
    this.#head = begin.x;
    this.#tail = end.x;
    for (let i = 1; i < full.length; i += 1) {
      const left = full[i - 1] ?? begin;
      const right = full[i] ?? end;
      const T = right.t - left.t;
      const d = right.x - left.x - left.v * T - (left.a * T * T) / 2;
      const dv = (right.v - left.v - left.a * T) * T;
      const da = (right.a - left.a) * T * T;
      this.#terms.set(
        [
          left.x,
          left.v,
          left.a / 2,
          (10 * d - 4 * dv + da / 2) / T ** 3,
          (-15 * d + 7 * dv - da) / T ** 4,
          (6 * d - 3 * dv + da / 2) / T ** 5,
        ],
        (i - 1) * 6,
      );
    }
  }

  /** This curve with another laid on top of it. */
  plus(top: Track): Track {
    const sum = new Track([{ t: 0, x: 0 }]);
    sum.#under = this;
    sum.#top = top;
    return sum;
  }

  /** Value at `t` seconds. */
  at(t: number): number {
    if (this.#under !== null && this.#top !== null) return this.#under.at(t) + this.#top.at(t);
    if (t <= this.first) return this.#head;
    if (t >= this.last) return this.#tail;
    const i = this.#interval(t);
    const c = this.#terms;
    const s = t - (this.#times[i] ?? 0);
    const o = i * 6;
    // Typed-array reads inside the bounds fixed by the constructor.
    return (
      (c[o] as number) +
      s *
        ((c[o + 1] as number) +
          s *
            ((c[o + 2] as number) + s * ((c[o + 3] as number) + s * ((c[o + 4] as number) + s * (c[o + 5] as number)))))
    );
  }

  /** Velocity at `t`, per second; one-sided inside the curve's own span. */
  rate(t: number): number {
    if (this.#under !== null && this.#top !== null) return this.#under.rate(t) + this.#top.rate(t);
    if (t < this.first || t > this.last || this.#times.length < 2) return 0;
    const i = this.#interval(t);
    const c = this.#terms;
    const s = t - (this.#times[i] ?? 0);
    const o = i * 6;
    return (
      (c[o + 1] as number) +
      s *
        (2 * (c[o + 2] as number) +
          s * (3 * (c[o + 3] as number) + s * (4 * (c[o + 4] as number) + s * 5 * (c[o + 5] as number))))
    );
  }

  /** Acceleration at `t`, per second squared; one-sided inside the curve's own span. */
  bend(t: number): number {
    if (this.#under !== null && this.#top !== null) return this.#under.bend(t) + this.#top.bend(t);
    if (t < this.first || t > this.last || this.#times.length < 2) return 0;
    const i = this.#interval(t);
    const s = t - (this.#times[i] ?? 0);
    const [c2 = 0, c3 = 0, c4 = 0, c5 = 0] = this.#terms.subarray(i * 6 + 2, i * 6 + 6);
    return 2 * c2 + s * (6 * c3 + s * (12 * c4 + s * 20 * c5));
  }

  #interval(t: number): number {
    const times = this.#times;
    let i = 0;
    while (i < times.length - 2 && t >= (times[i + 1] ?? Number.POSITIVE_INFINITY)) i += 1;
    return i;
  }
}

interface FullKey {
  t: number;
  x: number;
  v: number;
  a: number;
}

/** How strongly a turning point swings: 0 would rest there, 6 is a cubic's; people are between. */
const SWING = 3.6;

function complete(keys: readonly Key[]): FullKey[] {
  // A key that does not come later than the one before it has been overtaken, and falls out.
  const sorted: Key[] = [];
  for (const key of keys) {
    if (key.t - (sorted.at(-1)?.t ?? Number.NEGATIVE_INFINITY) > 1e-9) sorted.push(key);
  }
  return sorted.map((key, i) => {
    const left = sorted[i - 1];
    const right = sorted[i + 1];
    if (left === undefined || right === undefined) return { t: key.t, x: key.x, v: key.v ?? 0, a: key.a ?? 0 };
    const tl = key.t - left.t;
    const tr = right.t - key.t;
    const sl = (key.x - left.x) / tl;
    const sr = (right.x - key.x) / tr;
    if (sl * sr <= 0) {
      const al = (-SWING * sl) / tl;
      const ar = (SWING * sr) / tr;
      const swing = Math.abs(al) < Math.abs(ar) ? al : ar;
      return { t: key.t, x: key.x, v: key.v ?? 0, a: key.a ?? (key.v === undefined ? swing : 0) };
    }
    // Harmonic mean (Fritsch & Butland 1984): no overshoot where the curve passes on.
    const w1 = 2 * tr + tl;
    const w2 = tr + 2 * tl;
    return { t: key.t, x: key.x, v: key.v ?? (w1 + w2) / (w1 / sl + w2 / sr), a: key.a ?? 0 };
  });
}

/** Minimum-jerk step (Flash & Hogan 1985): 0 before `from`, 1 after `to`, flat at both ends. */
export function step(t: number, from: number, to: number): number {
  if (t <= from) return 0;
  if (t >= to) return 1;
  const s = (t - from) / (to - from);
  return s * s * s * (10 - 15 * s + 6 * s * s);
}

/** A curve that never moves. */
export const still = (x: number): Track => new Track([{ t: 0, x }]);

/** Three curves as a path in space, metres. */
export interface Path {
  readonly x: Track;
  readonly y: Track;
  readonly z: Track;
}

export interface PathKey {
  readonly t: number;
  readonly p: readonly [number, number, number];
  readonly v?: readonly [number, number, number] | undefined;
  readonly a?: readonly [number, number, number] | undefined;
}

export function path(keys: readonly PathKey[]): Path {
  const axis = (i: 0 | 1 | 2): Track =>
    new Track(
      keys.map((key) => ({
        t: key.t,
        x: key.p[i],
        ...(key.v === undefined ? {} : { v: key.v[i] }),
        ...(key.a === undefined ? {} : { a: key.a[i] }),
      })),
    );
  return { x: axis(0), y: axis(1), z: axis(2) };
}

export const pathAt = (line: Path, t: number): [number, number, number] => [line.x.at(t), line.y.at(t), line.z.at(t)];
