import type { Place } from '../../../shared-types/drills/drill.ts';
import { advisedPlace, walkedPlace } from '../../../shared-types/drills/places.ts';
import type { FaultCode, MovementName } from '../../../shared-types/motion/specification.ts';
import { tidy, type Viewpoint } from './viewpoint.ts';

/** Places that are one key away, in the order of their keys. */
export const spotNames = ['advised', 'left', 'front', 'right', 'behind', 'low'] as const;
export type SpotName = (typeof spotNames)[number];

const viewOf = ({ bearing, distance, height }: Omit<Place, 'name'>): Viewpoint => tidy({ bearing, distance, height });

export function placeView(place: Place): Viewpoint {
  return viewOf(place);
}

/** Where such a place lies. */
export function spotView(name: SpotName, movement: MovementName, fault: FaultCode | null): Viewpoint {
  switch (name) {
    case 'advised':
      return viewOf(advisedPlace(movement, fault));
    case 'left':
      return { bearing: 90, distance: 2.8, height: 1.65 };
    case 'front':
      return { bearing: 20, distance: 3, height: 1.65 };
    case 'right':
      return { bearing: -90, distance: 2.8, height: 1.65 };
    case 'behind':
      return { bearing: 170, distance: 3, height: 1.65 };
    case 'low':
      return { bearing: 90, distance: 2.4, height: 0.5 };
  }
}

/** Where the judge stood at a call, or null at the place that was given (within a step). */
export function stoodAt(view: Viewpoint, given: Place, movement: MovementName, fault: FaultCode | null): Place | null {
  const turn = Math.abs(((((view.bearing - given.bearing) % 360) + 540) % 360) - 180);
  const near =
    turn < 4 && Math.abs(view.distance - given.distance) < 0.25 && Math.abs(view.height - given.height) < 0.12;
  if (near) return null;
  const round = (value: number, digits: number): number => Number(value.toFixed(digits));
  return walkedPlace(movement, fault, {
    bearing: round(view.bearing, 1),
    distance: round(view.distance, 2),
    height: round(view.height, 2),
  });
}
