// The shelf of this browser, and where a card is open while it is edited.
import { randomHex } from '../../connection/random.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { type CardShelf, openShelf } from './shelf.ts';

let shelf: CardShelf | null = null;

/** One for the page, so that every screen sees the same list. */
export function browserShelf(): CardShelf {
  shelf ??= openShelf(lastingStorage, () => randomHex(8));
  return shelf;
}
