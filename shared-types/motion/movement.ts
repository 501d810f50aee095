import type { Choreography } from './choreography.ts';
import type { Join } from './flight.ts';
import type { FaultCode } from './specification.ts';

/** The margins that a choreography is built for, all of the movement's codes filled in. */
export type Knobs = Readonly<Record<FaultCode, number>>;

export interface Box {
  /** Middle of the box on the floor, and half sizes; y from 0 to `height`. Metres. */
  readonly z: number;
  readonly halfDepth: number;
  readonly halfWidth: number;
  readonly height: number;
}

/** What stands around the athlete, in the rep's own axes, metres. */
export interface Scene {
  /** The wall is the plane z = wallZ. */
  readonly wallZ: number | null;
  readonly box: Box | null;
  /** The line on the floor z = startLineZ, on a set's first rep. */
  readonly startLineZ: number | null;
}

export interface Built {
  readonly choreography: Choreography;
  readonly scene: Scene;
}

/** What one building of a rep leaves for the next, slightly different one. */
export interface Memory {
  joins?: readonly Join[];
}

/** A knob of this size asks for nothing: no ball is dropped, no hand is led past the box. */
export const UNASKED = 99;
