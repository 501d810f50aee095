import { desk } from './desk.ts';
import { drills } from './drills.ts';
import { entrance } from './entrance.ts';
import { nights } from './nights.ts';
import { people } from './people.ts';
import { reports } from './reports.ts';
import { review } from './review.ts';
import { sets } from './sets.ts';
import { settingsCalls } from './settings.ts';
import { standards } from './standards.ts';

/** The calls that the desk itself answers. */
export const deskContract = { desk, drills, nights, people, reports, review, sets, settings: settingsCalls, standards };

/** Every call that a screen can make, the same over a MessagePort and over a WebSocket; the host answers `entrance`. */
export const contract = { ...deskContract, entrance };
export type Contract = typeof contract;
