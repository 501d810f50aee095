import { openWriter, type WriteConnection } from './connection.ts';
import { build } from './query.ts';

/**
 * Notes in the database file itself, past its -wal, that it is open; returns the note's number. A program that dies leaves
 * the note and the -wal; a note without a -wal means that somebody has parted the two, and acknowledged events with them.
 */
export function beginSession(connection: WriteConnection, at: number): number {
  const { id } = connection.run(build.insertInto('sessions').values({ opened_at: at, closed_at: null }));
  connection.pragma('wal_checkpoint(TRUNCATE)');
  return id;
}

/** Notes that the database is closed, and closes it. */
export function endSession(connection: WriteConnection, session: number, at: number): void {
  const note = build.updateTable('sessions').set({ closed_at: at }).where('n', '=', session);
  try {
    connection.run(note);
    connection.pragma('optimize');
    connection.close();
  } catch {
    // The disk may be too full to grow the -wal by this note. Closing empties the -wal, which makes the room.
    connection.close();
    const again = openWriter(connection.path);
    try {
      again.run(note);
    } finally {
      again.close();
    }
  }
}
