// What the bots at the table in the page are called, so that a deal played again is played with the same ones.
import { type Four, forFour } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

const KEY = 'bot-names';

/** `deal` tells which deal they were last met in. */
export function storeBotNames(storage: TextStorage, deal: string, names: Four<string>): void {
  storage.write(KEY, [deal, ...names].join('\n'));
}

/** `otherwise` for any other deal than the one they were last met in. */
export function readBotNames(storage: TextStorage, deal: string, otherwise: Four<string>): Four<string> {
  const [known, ...names] = (storage.read(KEY) ?? '').split('\n');
  return known === deal ? forFour((seat) => names[seat] || otherwise[seat]) : otherwise;
}
