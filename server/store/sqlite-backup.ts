// Copies the SQLite file as it is at one moment, while a server goes on writing to it.
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { hold } from './held.ts';
import { codeOf } from './opened.ts';
import { openToRead, pragma } from './sqlite-file.ts';

export type BackupOutcome =
  /** `rooms` counts rooms and classes. */
  | { readonly ok: true; readonly rooms: number; readonly events: number; readonly bytes: number }
  /** Nothing was written. */
  | { readonly ok: false; readonly message: string };

/** `target` must not exist; it is there only when it is whole, checked and on disk. */
export function backupFile(location: string, target: string): BackupOutcome {
  if (!existsSync(location)) return rejected(`There is no file ${location}; check DATA_DIR.`);
  if (existsSync(target)) return rejected(`${target} is there already; name a file that is not.`);
  const source = openToRead(location);
  if (!source.ok) return source;
  const unfinished = `${target}.unfinished-${process.pid}`;
  try {
    // One read transaction: a whole number of commits, for which no write has to wait.
    hold(source.file.prepare('VACUUM INTO ?')).run(unfinished);
    const counts = countsIn(unfinished);
    if (counts === null)
      return rejected(`The copy of ${location} is damaged, and so may be the file itself.`);
    sync(unfinished);
    renameSync(unfinished, target);
    sync(path.dirname(target));
    return { ok: true, ...counts, bytes: statSync(target).size };
  } catch (error) {
    return rejected(`${target} cannot be written (${codeOf(error)}); check its folder and the space there.`);
  } finally {
    source.close();
    rmSync(unfinished, { force: true });
  }
}

/** Null where the copy is not whole. */
function countsIn(copy: string): { rooms: number; events: number } | null {
  const opened = openToRead(copy);
  if (!opened.ok) return null;
  const { file, close } = opened;
  const isWhole = pragma(file, 'integrity_check') === 'ok';
  const counts = hold(
    file.prepare<[], { rooms: number; events: number }>(
      'SELECT count(*) AS rooms, coalesce(sum(version), 0) AS events FROM log',
    ),
  ).get();
  close();
  return isWhole && counts ? counts : null;
}

/** Waits until a file or a folder is on disk. */
function sync(place: string): void {
  const handle = openSync(place, 'r');
  fsyncSync(handle);
  closeSync(handle);
}

function rejected(message: string): BackupOutcome {
  return { ok: false, message };
}
