import { type ComponentType, lazy } from 'react';
import type { Words } from './parts/words/words.tsx';

export interface Area {
  /** Its place in the address, and its name in the catalogue of texts. */
  readonly name: keyof Words['shell']['areas'];
  readonly Screen: ComponentType;
  /** Fetches the area's code ahead of its first opening. */
  readonly load: () => Promise<unknown>;
}

function area(name: Area['name'], load: () => Promise<{ default: ComponentType }>): Area {
  return { name, Screen: lazy(load), load };
}

/** The areas that exist, in the order of the navigation; each is loaded when it is first opened. */
export const areas: readonly Area[] = [
  area('judge', () => import('./areas/judge/judge-area.tsx')),
  area('review', () => import('./areas/review/review-area.tsx')),
  area('eye', () => import('./areas/eye/eye-area.tsx')),
  area('night', () => import('./areas/night/night-area.tsx')),
  area('standards', () => import('./areas/standards/standards-area.tsx')),
  area('people', () => import('./areas/people/people-area.tsx')),
];

/** Fetches the light areas while nothing else is to be done, so that none of them opens with a blank moment. */
export function loadAreasAhead(): () => void {
  const timer = setTimeout(() => {
    // A failed fetch is told where the area is opened; here there is nobody to tell.
    for (const { load } of areas) void load().catch(() => {});
  }, 1_500);
  return () => clearTimeout(timer);
}
