// Opens the SQLite file: created where there is none, migrated, rejected with a message where it is not ours.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import Database from 'better-sqlite3';
import { codeOf } from './opened.ts';
import { MIGRATIONS, tooNew, tooOld, UNRELEASED_TABLE } from './schema.ts';

/** Marks the file as ours: "Quad" in ASCII. */
const APPLICATION = 0x51756164;
/** How long a write waits, in milliseconds, while another process holds the file. Everything else waits with it. */
const BUSY_MS = 250;

export type OpenedFile =
  | { readonly ok: true; readonly file: Database.Database }
  | { readonly ok: false; readonly message: string };

export function openFile(location: string): OpenedFile {
  let file: Database.Database | undefined;
  try {
    mkdirSync(path.dirname(location), { recursive: true });
    file = new Database(location, { timeout: BUSY_MS });
    const problem = prepare(file, location);
    if (problem === null) return { ok: true, file };
    file.close();
    return { ok: false, message: problem };
  } catch (error) {
    file?.close();
    return { ok: false, message: messageFor(location, codeOf(error)) };
  }
}

function prepare(file: Database.Database, location: string): string | null {
  const foreign = `${location} is a database of another program; choose another place for the data.`;
  const version = pragma(file, 'user_version');
  const owner = pragma(file, 'application_id');
  const tables = file.prepare<[], { name: string }>('SELECT name FROM sqlite_schema').all();
  if (owner !== APPLICATION && (owner !== 0 || version !== 0 || tables.length > 0)) return foreign;
  if (tables.some(({ name }) => name === UNRELEASED_TABLE)) {
    return tooOld(location, 'choose another DATA_DIR or delete the file');
  }
  const problem = tooNew(version, location);
  if (problem !== null) return problem;
  file.pragma('journal_mode = WAL');
  // In WAL mode only FULL makes every commit durable before it returns.
  file.pragma('synchronous = FULL');
  file.pragma('foreign_keys = ON');
  file.transaction(() => migrate(file)).immediate();
  return null;
}

/** Reads the version anew, for another process may have been quicker. */
function migrate(file: Database.Database): void {
  for (const { sqlite } of MIGRATIONS.slice(pragma(file, 'user_version'))) file.exec(sqlite);
  file.pragma(`application_id = ${APPLICATION}`);
  file.pragma(`user_version = ${MIGRATIONS.length}`);
}

function pragma(file: Database.Database, name: 'user_version' | 'application_id'): number {
  return Number(file.pragma(name, { simple: true }));
}

function messageFor(location: string, code: string): string {
  if (code === 'SQLITE_NOTADB') return `${location} is not a database; choose another place for the data.`;
  if (code === 'SQLITE_BUSY') return `${location} is held by another program; end that one and try again.`;
  return `${location} cannot be opened (${code}); check that its folder exists and may be written to.`;
}
