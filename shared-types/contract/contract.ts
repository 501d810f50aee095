import { desk } from './desk.ts';
import { drills } from './drills.ts';
import { people } from './people.ts';
import { reports } from './reports.ts';
import { review } from './review.ts';
import { sets } from './sets.ts';
import { settingsCalls } from './settings.ts';
import { standards } from './standards.ts';

/** Every call that a screen can make of the desk, the same over a MessagePort and over a WebSocket. */
export const contract = { desk, drills, people, reports, review, sets, settings: settingsCalls, standards };
export type Contract = typeof contract;
