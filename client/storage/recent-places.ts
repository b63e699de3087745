// Where this browser sat last: paths of tables and of deals in the page, the latest first.
import type { TextStorage } from './browser-storage.ts';

const KEY = 'recent';

/** As many as fit under the doors of the front page. */
const MAX_RECENT = 4;

export function recentPlaces(storage: TextStorage): readonly string[] {
  return (storage.read(KEY) ?? '').split('\n').filter(Boolean).slice(0, MAX_RECENT);
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
