import { median, type RibbonMark } from './marks.ts';

/** Where one mark stands, in the ribbon's own pixels; `y` is its top, the foot is the ribbon's base. */
export interface Placed {
  readonly mark: RibbonMark;
  readonly x: number;
  readonly width: number;
  readonly y: number;
  readonly height: number;
  /** The cycle is longer than the ribbon is high: the mark is cut off and says so. */
  readonly cut: boolean;
  /** Row of its initial below the base, 0 or 1; null where there is no initial, or no room for it. */
  readonly letterRow: 0 | 1 | null;
}

/** A typical cycle fills this share of the height while the ribbon grows; a much longer one would fill it, and is cut. */
const growingShare = 0.36;
/** In a ribbon that is whole, the longest mark may lift all of them up to this. */
const highestShare = 0.62;
const lowestShare = 0.14;
const widestSlot = 14;
const letterWidth = 10;

/**
 * Lays marks out from left to right over `width` by `height` pixels (the initials' rows come below). `slots` is how many
 * are expected, so that a growing ribbon does not shrink at every mark; without it the ribbon is whole.
 */
export function placeMarks(
  marks: readonly RibbonMark[],
  width: number,
  height: number,
  slots?: number,
): readonly Placed[] {
  const slot = Math.min(widestSlot, width / Math.max(1, slots ?? 0, marks.length));
  const bar = Math.max(slot * 0.7, slot - Math.min(3, Math.max(0.5, slot * 0.24)));
  const typical = median(marks.flatMap((mark) => (mark.cycleS === null ? [] : [mark.cycleS]))) ?? 1;
  const longest = Math.max(...marks.map((mark) => mark.cycleS ?? 0), typical) / Math.max(typical, 0.001);
  const usualShare = slots === undefined ? Math.min(highestShare, Math.max(growingShare, 1 / longest)) : growingShare;
  const lastLetter: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return marks.map((mark, index) => {
    const share = usualShare * ((mark.cycleS ?? typical) / Math.max(typical, 0.001));
    const tall = Math.min(1, Math.max(lowestShare, share)) * height;
    const x = index * slot + (slot - bar) / 2;
    const middle = x + bar / 2;
    let letterRow: 0 | 1 | null = null;
    if (mark.verdict !== 'counted' && mark.initial !== null && !mark.withdrawn) {
      letterRow = middle - lastLetter[0] >= letterWidth ? 0 : middle - lastLetter[1] >= letterWidth ? 1 : null;
      if (letterRow !== null) lastLetter[letterRow] = middle;
    }
    return { mark, x, width: bar, y: height - tall, height: tall, cut: share > 1, letterRow };
  });
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function path(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
}

/**
 * The outline of a mark. Counted: a full bar. Caution: a bar with its head cut off and set above it. No-rep: an open
 * outline with a notch in its top. A bar that is cut has a slanted top.
 */
export function outline({ mark, x, width, y, height, cut }: Placed, base: number): string {
  const right = x + width;
  if (mark.verdict === 'no-rep') {
    const inset = Math.min(0.75, width / 4);
    const [left, edge] = [x + inset, right - inset];
    const dip = y + Math.min(height * 0.5, Math.max(3, width * 0.9));
    return path([
      [left, base - inset],
      [left, y + inset],
      [(left + edge) / 2, dip],
      [edge, y + inset],
      [edge, base - inset],
    ]);
  }
  const top: readonly (readonly [number, number])[] = cut
    ? [
        [x, y + Math.min(6, width)],
        [right, y],
      ]
    : [
        [x, y],
        [right, y],
      ];
  if (mark.verdict === 'counted') return `${path([[x, base], ...top, [right, base]])}Z`;
  const head = Math.min(Math.max(3, width * 0.8), height * 0.4);
  const gap = Math.min(2.5, height * 0.2);
  const neck = y + head + gap;
  return `${path([[x, neck - gap], ...top, [right, neck - gap]])}Z${path([
    [x, base],
    [x, neck],
    [right, neck],
    [right, base],
  ])}Z`;
}

/** Which mark lies at a place; -1 with none. */
export function markAt(placed: readonly Placed[], x: number): number {
  let best = -1;
  let nearest = Number.POSITIVE_INFINITY;
  for (const [index, item] of placed.entries()) {
    const distance = Math.abs(item.x + item.width / 2 - x);
    if (distance < nearest) [best, nearest] = [index, distance];
  }
  return best;
}
