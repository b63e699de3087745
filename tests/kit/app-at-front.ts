// The app of a page that stands at the front, with nothing of a browser behind it.
import { openApp } from '../../client/app/app-state.ts';
import { memoryStorage } from './memory-storage.ts';

export function appAtFront(storage = memoryStorage()) {
  return openApp({
    storage,
    place: () => ({ pathname: '/', hash: '', over: false }),
    origin: 'https://table.example',
    showPath() {},
    renamePath() {},
    goBack() {},
    onReturn: () => () => {},
    newSeed: () => '0'.repeat(64),
    random: { below: () => 0 },
  });
}
