import { log } from './0001-log.ts';
import { facts } from './0002-facts.ts';
import { sessions } from './0003-sessions.ts';
import { lastEvents } from './0004-last-events.ts';
import { drills } from './0005-drills.ts';
import { nights } from './0006-nights.ts';
import type { Migration } from './migration.ts';

/** Every step in order, numbered from 1 without a gap. */
export const migrations: readonly Migration[] = [log, facts, sessions, lastEvents, drills, nights];

/** The version of the schema that this program reads and writes. */
export const SCHEMA_VERSION = migrations.length;
