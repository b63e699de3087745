// Where this browser sat last: paths of tables and of deals in the page, the latest first.
import type { Seat } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

const KEY = 'recent';

/** As many as fit under the doors of the front page. */
const MAX_RECENT = 4;

export function recentPlaces(storage: TextStorage): readonly string[] {
  return (storage.read(KEY) ?? '').split('\n').filter(Boolean).slice(0, MAX_RECENT);
}

/** A table told `you`: only a seat there is something to come back to, not one that was given up or taken. */
export function notePlace(storage: TextStorage, path: string, you: Seat | null): void {
  if (you === null) forgetPlace(storage, path);
  else rememberPlace(storage, path);
}

export function rememberPlace(storage: TextStorage, path: string): void {
  const others = recentPlaces(storage).filter((known) => known !== path);
  write(storage, [path, ...others].slice(0, MAX_RECENT));
}

export function forgetPlace(storage: TextStorage, path: string): void {
  write(
    storage,
    recentPlaces(storage).filter((known) => known !== path),
  );
}

function write(storage: TextStorage, places: readonly string[]): void {
  storage.write(KEY, places.join('\n'));
}
