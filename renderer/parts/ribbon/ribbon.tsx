import type { PointerEvent } from 'react';
import { useWalk } from '../figure/use-walk.ts';
import { useWidth } from '../figure/use-width.ts';
import { classNames } from '../look/class-names.ts';
import { useFormats, useWords } from '../words/words.tsx';
import { markAt, outline, placeMarks } from './geometry.ts';
import { type RibbonMark, ribbonTally } from './marks.ts';
import styles from './ribbon.module.css';

interface RibbonProps {
  readonly marks: readonly RibbonMark[];
  /** Attempts to expect, for a ribbon that grows while the set runs. */
  readonly slots?: number;
  /** Height of the tallest mark, CSS pixels. */
  readonly height?: number;
  /** Live: no walking, no readout, no words but the summary; the newest mark comes in gently. */
  readonly live?: boolean;
  readonly onPick?: (index: number) => void;
  /** The attempt that something else on the screen speaks of. */
  readonly picked?: number | null;
}

const letterRowHeight = 13;

/** Every attempt of a set, one mark each: height its cycle time, an open notch a no-rep with its reason's initial. */
export function Ribbon({ marks, slots, height = 72, live, onPick, picked }: RibbonProps) {
  const words = useWords().ribbon;
  const formats = useFormats();
  const [box, width] = useWidth<HTMLDivElement>(640);
  const walk = useWalk(marks.length, onPick);
  const placed = placeMarks(marks, width, height, slots);
  const rows = live ? 0 : 2;
  const whole = height + 2 + rows * letterRowHeight;
  // Thin marks take a thin line, or an open notch would close up.
  const line = { '--line': `${Math.min(1.5, (placed[0]?.width ?? 3) / 3.2)}px` } as const;
  const shown = walk.place === -1 ? (picked ?? -1) : walk.place;
  const point = (event: PointerEvent<SVGSVGElement>): number => {
    const frame = event.currentTarget.getBoundingClientRect();
    return markAt(placed, ((event.clientX - frame.left) / frame.width) * width);
  };
  const label = words.summary(ribbonTally(marks));
  const drawing = placed.map((item, index) => {
    const { mark } = item;
    const kind = mark.withdrawn ? styles.withdrawn : styles[mark.verdict];
    return (
      <g
        // biome-ignore lint/suspicious/noArrayIndexKey: an attempt keeps its place, the log only grows.
        key={index}
        {...(live ? {} : walk.option(index))}
        aria-label={live ? undefined : words.mark(mark)}
        className={classNames(styles.mark, kind, index === shown && styles.shown)}
      >
        <path d={outline(item, height)} />
        {rows > 0 && item.letterRow !== null ? (
          <text x={item.x + item.width / 2} y={height + letterRowHeight * (item.letterRow + 1)} textAnchor="middle">
            {mark.initial}
          </text>
        ) : null}
      </g>
    );
  });
  if (live) {
    return (
      <div ref={box} className={styles.box}>
        <svg className={styles.live} style={line} viewBox={`0 0 ${width} ${whole}`} role="img" aria-label={label}>
          {drawing}
        </svg>
      </div>
    );
  }
  const held = marks[shown];
  return (
    <div ref={box} className={styles.box}>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keys that answer to the press come with the walk. */}
      <svg
        {...walk.list}
        style={line}
        className={classNames(styles.ribbon, onPick !== undefined && styles.pickable)}
        viewBox={`0 0 ${width} ${whole}`}
        aria-label={label}
        onPointerMove={(event) => walk.setPlace(point(event))}
        onClick={() => (walk.place === -1 ? undefined : onPick?.(walk.place))}
      >
        <rect width={width} height={whole} fill="transparent" />
        {drawing}
      </svg>
      <p className={classNames(styles.readout, 'no-print')} aria-hidden="true">
        {held === undefined ? words.hint : `${words.mark(held)}${words.atTime(formats.duration(held.at))}`}
      </p>
    </div>
  );
}
