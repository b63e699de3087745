// Opens the SQLite file: created where there is none, migrated, rejected with a message where it is not ours.
import { mkdirSync, realpathSync } from 'node:fs';
import path from 'node:path';
import Database from 'better-sqlite3';
import { hold } from './held.ts';
import { codeOf } from './opened.ts';
import { MIGRATIONS, tooNew, tooOld, UNRELEASED_TABLE } from './schema.ts';

/** Marks the file as ours: "Quad" in ASCII. */
const APPLICATION = 0x51756164;
/** How long a write waits, in milliseconds, while another process holds the file. Everything else waits with it. */
const BUSY_MS = 250;
/** How long to wait, in milliseconds, for a server that is just ending to let go of the file. */
const LOCK_WAIT_MS = 1000;

/** `alone`: no other server may have the file; `beside`: for tools that look at it while a server runs. */
export type FileAccess = 'alone' | 'beside';

export type OpenedFile =
  /** `close` ends everything that holds the file. */
  | { readonly ok: true; readonly file: Database.Database; close(): void }
  | { readonly ok: false; readonly message: string };

export function openFile(location: string, access: FileAccess): OpenedFile {
  const opened: Database.Database[] = [];
  const close = () => {
    for (const one of opened) one.close();
  };
  try {
    mkdirSync(path.dirname(location), { recursive: true });
    const file = hold(new Database(location, { timeout: BUSY_MS }));
    opened.push(file);
    const lock = access === 'alone' ? lockFor(location) : null;
    if (lock) opened.push(lock);
    const problem = lock?.inTransaction === false ? inUse(location) : prepare(file, location);
    if (problem === null) return { ok: true, file, close };
    close();
    return { ok: false, message: problem };
  } catch (error) {
    close();
    return { ok: false, message: messageFor(location, codeOf(error)) };
  }
}

/** Opens a file that is there, to be read and nothing more; one that is not ours is rejected. */
export function openToRead(location: string): OpenedFile {
  let file: Database.Database | undefined;
  try {
    file = hold(new Database(location, { readonly: true, fileMustExist: true, timeout: BUSY_MS }));
    const problem =
      pragma(file, 'application_id') === APPLICATION ? problemWith(file, location) : foreign(location);
    if (problem === null) return { ok: true, file, close: () => file?.close() };
    file.close();
    return { ok: false, message: problem };
  } catch (error) {
    file?.close();
    return { ok: false, message: messageFor(location, codeOf(error)) };
  }
}

/**
 * A database beside the file, in a transaction that excludes every other as long as its connection is open: the
 * system lifts that lock when the process ends, however it ends. Without a transaction where another server has it.
 * The file itself is not locked, or nobody could back it up while the server runs.
 */
function lockFor(location: string): Database.Database {
  const lock = hold(new Database(`${realpathSync(location)}.lock`, { timeout: LOCK_WAIT_MS }));
  try {
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    if (codeOf(error) === 'SQLITE_BUSY') return lock;
    lock.close();
    throw error;
  }
  return lock;
}

function prepare(file: Database.Database, location: string): string | null {
  const problem = problemWith(file, location);
  if (problem !== null) return problem;
  file.exec('PRAGMA journal_mode = WAL');
  // In WAL mode only FULL makes every commit durable before it returns.
  file.exec('PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON');
  file.transaction(() => migrate(file)).immediate();
  return null;
}

/** Why this file is left alone; null where it is ours or empty. */
function problemWith(file: Database.Database, location: string): string | null {
  const version = Number(pragma(file, 'user_version'));
  const owner = pragma(file, 'application_id');
  const tables = hold(file.prepare<[], { name: string }>('SELECT name FROM sqlite_schema')).all();
  if (owner !== APPLICATION && (owner !== 0 || version !== 0 || tables.length > 0)) return foreign(location);
  if (tables.some(({ name }) => name === UNRELEASED_TABLE)) {
    return tooOld(location, 'choose another DATA_DIR or delete the file');
  }
  return tooNew(version, location);
}

/** Reads the version anew, for another process may have been quicker. */
function migrate(file: Database.Database): void {
  for (const { sqlite } of MIGRATIONS.slice(Number(pragma(file, 'user_version')))) file.exec(sqlite);
  file.exec(`PRAGMA application_id = ${APPLICATION}; PRAGMA user_version = ${MIGRATIONS.length}`);
}

/** `file.pragma` would make a statement that nobody holds. */
export function pragma(
  file: Database.Database,
  name: 'user_version' | 'application_id' | 'integrity_check',
): unknown {
  return hold(file.prepare(`PRAGMA ${name}`))
    .pluck()
    .get();
}

function foreign(location: string): string {
  return `${location} is a database of another program; choose another place for the data.`;
}

function inUse(location: string): string {
  return (
    `${location} is in use by another server, and one file has one server. End that server, give this one a ` +
    'DATA_DIR of its own, or let both share a PostgreSQL database (DATABASE_URL).'
  );
}

function messageFor(location: string, code: string): string {
  if (code === 'SQLITE_NOTADB') return `${location} is not a database; choose another place for the data.`;
  if (code === 'SQLITE_BUSY') return `${location} is held by another program; end that one and try again.`;
  if (code === 'ERR_DLOPEN_FAILED') {
    return `SQLite is not built for this version of Node (${process.version}); run npm ci with it, then start again.`;
  }
  return `${location} cannot be opened (${code}); check that its folder exists and may be written to.`;
}
