import { type ComponentType, lazy } from 'react';
import type { Words } from './parts/words/words.tsx';

export interface Area {
  /** Its place in the address, and its name in the catalogue of texts. */
  readonly name: keyof Words['shell']['areas'];
  readonly Screen: ComponentType;
}

/** The areas that exist, in the order of the navigation; each is loaded when it is first opened. */
export const areas: readonly Area[] = [
  { name: 'judge', Screen: lazy(() => import('./areas/judge/judge-area.tsx')) },
  { name: 'standards', Screen: lazy(() => import('./areas/standards/standards-area.tsx')) },
  { name: 'people', Screen: lazy(() => import('./areas/people/people-area.tsx')) },
];
