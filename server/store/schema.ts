// The tables of the two databases and how they came about: one step a version, run in order when a store is opened.

interface Migration {
  readonly sqlite: string;
  readonly postgres: string;
}

/** Step n leads from version n to n + 1. A step that has been released is never changed; a new one is added. */
export const MIGRATIONS: readonly Migration[] = [
  {
    // Rows lie in the order they came, for writing is what there is most of: laid out by room, a group of
    // commits touches a page a room and takes half as long again.
    sqlite: `
      CREATE TABLE room (
        id INTEGER PRIMARY KEY,
        code TEXT NOT NULL UNIQUE,
        version INTEGER NOT NULL,
        touched_at INTEGER NOT NULL
      ) STRICT;
      CREATE TABLE event (
        room INTEGER NOT NULL REFERENCES room (id) ON DELETE CASCADE,
        seq INTEGER NOT NULL,
        cmd_id TEXT,
        kind TEXT NOT NULL,
        body TEXT NOT NULL,
        at INTEGER NOT NULL,
        PRIMARY KEY (room, seq)
      ) STRICT;
      CREATE UNIQUE INDEX event_command ON event (room, cmd_id) WHERE cmd_id IS NOT NULL;
    `,
    postgres: `
      CREATE TABLE quadrille.room (
        id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
        code text COLLATE "C" NOT NULL UNIQUE,
        version integer NOT NULL,
        touched_at bigint NOT NULL
      );
      CREATE TABLE quadrille.event (
        room bigint NOT NULL REFERENCES quadrille.room (id) ON DELETE CASCADE,
        seq integer NOT NULL,
        cmd_id text COLLATE "C",
        kind text NOT NULL,
        body text NOT NULL,
        at bigint NOT NULL,
        PRIMARY KEY (room, seq)
      );
      CREATE UNIQUE INDEX event_command ON quadrille.event (room, cmd_id) WHERE cmd_id IS NOT NULL;
      CREATE TABLE quadrille.ticket (
        key text PRIMARY KEY,
        code text NOT NULL,
        seat integer,
        since integer,
        until timestamptz NOT NULL
      );
    `,
  },
  {
    // One file has one server, which knows itself.
    sqlite: '',
    postgres: 'CREATE TABLE quadrille.node (id text PRIMARY KEY, until timestamptz NOT NULL);',
  },
];

/** Why a store with this version is left alone, or null when it can be brought up to date. */
export function tooNew(version: number, where: string): string | null {
  if (version <= MIGRATIONS.length) return null;
  return (
    `${where} was written by a newer version of Quadrille (schema ${version}; this one knows ` +
    `${MIGRATIONS.length}). Start that version, or choose another place for the data.`
  );
}
