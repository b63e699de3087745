// The six words of a commitment: how much they say, and which list they come from.
import { describe, expect, test } from 'vitest';
import { BITS_A_WORD, ROOT_WORDS, rootWords } from '../../shared-engine/rules/deal/root-words.ts';
import { seedNamed } from '../kit/rounds.ts';

describe('six words', () => {
  test('D4 six words say the first 60 bits of the commitment, ten bits a word', () => {
    expect(ROOT_WORDS * BITS_A_WORD).toBe(60);
    const zero = rootWords('0'.repeat(64));
    const last = rootWords('f'.repeat(64));
    expect(new Set(zero).size).toBe(1);
    expect(zero).toHaveLength(6);
    expect(zero[0]! < last[0]!).toBe(true);
    const nth = (n: number) =>
      rootWords((BigInt(n) << 54n).toString(16).padStart(16, '0').padEnd(64, '0'))[0]!;
    const all = Array.from({ length: 1024 }, (_, n) => nth(n));
    expect(new Set(all).size).toBe(1024);
    expect(all).toEqual(all.toSorted());
    for (const word of all) expect(word).toMatch(/^[a-z]{3,8}$/);
  });

  test('D4 one bit of the first 60 changes exactly one word, and a later one none', () => {
    const hex = seedNamed('words');
    const flipped = (bit: number) => {
      const at = Math.floor(bit / 4);
      const digit = (Number.parseInt(hex[at]!, 16) ^ (8 >> (bit % 4))).toString(16);
      return hex.slice(0, at) + digit + hex.slice(at + 1);
    };
    for (let bit = 0; bit < 256; bit++) {
      const words = rootWords(flipped(bit));
      const changed = rootWords(hex).flatMap((word, n) => (word === words[n] ? [] : [n]));
      expect(changed).toEqual(bit < 60 ? [Math.floor(bit / 10)] : []);
    }
  });
});
