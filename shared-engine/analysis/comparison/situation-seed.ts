// The seed of an analysis: a hash of the situation as it was offered, so that work can begin before anybody chooses.
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { CompiledCard } from '../../card/index.ts';
import type { Situation } from '../belief/situation.ts';

/** Two cards with the same patterns and hands have the same one, whatever they are called. */
export function hashOfCard({ patterns, hands }: CompiledCard): string {
  const concealed = patterns.map((pattern) => Number(pattern.concealed)).join('');
  const wanted = hands.map(({ pattern, singles, groups }) => [pattern, ...singles, ...groups].join(','));
  return wordsOf([concealed, ...wanted].join('\n')).join('-');
}

/** Depends on the card, the ways to play and what was known, not on what was chosen. */
export function situationSeed(cardHash: string, situation: Situation): number {
  const { seat, dealer, terms, step, agreed, start, rack, past } = situation;
  const { secondCharleston, blindPasses, courtesy } = terms;
  const ways = [secondCharleston, blindPasses, courtesy];
  return wordsOf(JSON.stringify([cardHash, ways, seat, dealer, step, agreed, start, rack, past]))[0]!;
}

function wordsOf(text: string): readonly number[] {
  const { buffer, byteOffset } = sha256(utf8ToBytes(text));
  const view = new DataView(buffer, byteOffset);
  return [0, 4, 8, 12].map((at) => view.getUint32(at));
}
