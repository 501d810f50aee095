import { type RefObject, useEffect, useEffectEvent } from 'react';
import { moved, type Viewpoint } from './viewpoint.ts';

const DEGREES_PER_PIXEL = 0.4;
const METRES_PER_PIXEL = 0.004;

/** Walking round by drag and pinch on the canvas, and nearer or farther by the wheel. */
export function useOrbit(
  canvas: RefObject<HTMLCanvasElement | null>,
  view: Viewpoint,
  onView: ((view: Viewpoint) => void) | undefined,
): void {
  const go = useEffectEvent((by: Partial<Viewpoint>) => onView?.(moved(view, by)));
  const free = onView !== undefined;
  useEffect(() => {
    const element = canvas.current;
    if (element === null || !free) return;
    const fingers = new Map<number, { x: number; y: number }>();
    const spread = (): number => {
      const [one, other] = [...fingers.values()];
      return one === undefined || other === undefined ? 0 : Math.hypot(one.x - other.x, one.y - other.y);
    };
    const down = (event: PointerEvent): void => {
      if (event.button !== 0) return;
      element.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    };
    const move = (event: PointerEvent): void => {
      const from = fingers.get(event.pointerId);
      if (from === undefined) return;
      const before = spread();
      fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (fingers.size === 1) {
        go({
          bearing: -(event.clientX - from.x) * DEGREES_PER_PIXEL,
          height: (event.clientY - from.y) * METRES_PER_PIXEL,
        });
      } else {
        go({ distance: (before - spread()) * 2 * METRES_PER_PIXEL });
      }
    };
    const up = (event: PointerEvent): void => {
      fingers.delete(event.pointerId);
    };
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      go({ distance: Math.sign(event.deltaY) * 0.15 });
    };
    element.addEventListener('pointerdown', down);
    element.addEventListener('pointermove', move);
    element.addEventListener('pointerup', up);
    element.addEventListener('pointercancel', up);
    element.addEventListener('wheel', wheel, { passive: false });
    return () => {
      element.removeEventListener('pointerdown', down);
      element.removeEventListener('pointermove', move);
      element.removeEventListener('pointerup', up);
      element.removeEventListener('pointercancel', up);
      element.removeEventListener('wheel', wheel);
    };
  }, [canvas, free]);
}
