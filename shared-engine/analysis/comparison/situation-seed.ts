// The seeds of an analysis: hashes of the situation as it was offered, so that work can begin before anybody chooses.
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { CompiledCard } from '../../card/index.ts';
import type { Situation } from '../belief/situation.ts';
import type { Seeds } from './sampled-deals.ts';

/** Two cards with the same patterns and hands have the same one, whatever they are called. */
export function hashOfCard({ patterns, hands }: CompiledCard): string {
  const concealed = patterns.map((pattern) => Number(pattern.concealed)).join('');
  const wanted = hands.map(({ pattern, singles, groups }) => [pattern, ...singles, ...groups].join(','));
  return wordsOf([concealed, ...wanted].join('\n')).join('-');
}

/**
 * They depend on the card, the ways to play and what was known, not on what was chosen; that of the deals on the tiles
 * the seat was dealt alone.
 */
export function situationSeeds(cardHash: string, situation: Situation): Seeds {
  const { seat, dealer, terms, step, agreed, start, rack, past } = situation;
  const { secondCharleston, blindPasses, courtesy } = terms;
  const dealt = [cardHash, secondCharleston, blindPasses, courtesy, seat, dealer, start];
  return { deals: wordOf(dealt), noise: wordOf([...dealt, step, agreed, rack, past]) };
}

function wordOf(known: readonly unknown[]): number {
  return wordsOf(JSON.stringify(known))[0]!;
}

function wordsOf(text: string): readonly number[] {
  const { buffer, byteOffset } = sha256(utf8ToBytes(text));
  const view = new DataView(buffer, byteOffset);
  return [0, 4, 8, 12].map((at) => view.getUint32(at));
}
