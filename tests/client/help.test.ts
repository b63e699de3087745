// The help explains what the table, the review and the coach say and a club player cannot know.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { REVIEW_WORDS, WORDS } from '../../client/app/help-strings.ts';

const ROOT = path.resolve(import.meta.dirname, '../..');
const SPOKEN = [
  'shared-engine/analysis/review/sentences',
  'shared-engine/analysis/coach',
  'client/review',
  'client/cards',
];

/** All that review, coach and card say: what stands in quotes in these files, comments left out. */
const said = SPOKEN.flatMap((folder) =>
  readdirSync(path.join(ROOT, folder))
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(path.join(ROOT, folder, file), 'utf8')),
)
  .flatMap((text) => text.replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '').match(/'[^'\n]*'|`[^`]*`/g) ?? [])
  .join('\n');

/** What is said there, and the word under which the help explains it. */
const TERMS: readonly (readonly [string, string])[] = [
  ['wins in 100 games', 'Wins in 100 games'],
  ['closest hands', 'Closest hands'],
  ['within reach', 'Within reach'],
  ['likeliest', 'Likeliest hands'],
  ['serves', 'Serves a hand'],
  ['passers', 'Passers'],
  ['Risky to pass', 'Risky to pass'],
  ['rule of thumb', 'Rule of thumb'],
  ['At first look', 'At first look'],
  ['played on', 'Played on'],
  ['at the close', 'The close'],
  ['steady player', 'Steady player'],
  ['easy-going', 'Easy-going, club and strong players'],
  ['luck', 'Luck'],
  ['your stand-in', 'Stand-in'],
  ['As East', 'East'],
  ['section of the card', 'Section'],
  ['concealed', 'Concealed'],
  ['quint', 'Pair, pung, kong, quint'],
  ['like numbers', 'Like numbers'],
  [' away', '7 away'],
];

describe('the help', () => {
  it('explains every term of the review and the coach, and keeps none that they no longer use', () => {
    const explained = [...WORDS, ...REVIEW_WORDS].map(({ word }) => word);
    for (const [term] of TERMS) expect([term, said.includes(term)]).toEqual([term, true]);
    expect(TERMS.map(([, word]) => word).filter((word) => !explained.includes(word))).toEqual([]);
    const named = TERMS.map(([, word]) => word);
    expect(REVIEW_WORDS.map(({ word }) => word).filter((word) => !named.includes(word))).toEqual([]);
  });

  it('explains each word once, in a few sentences of at most 25 words', () => {
    const all = [...WORDS, ...REVIEW_WORDS];
    expect(new Set(all.map(({ word }) => word)).size).toBe(all.length);
    for (const { word, about } of all) {
      const sentences = about.split(/(?<=[.:!?]) (?=[A-Z])/);
      expect([word, sentences.length <= 3]).toEqual([word, true]);
      for (const sentence of sentences) {
        expect([word, sentence.split(' ').length]).toEqual([word, expect.toSatisfy((n: number) => n <= 25)]);
      }
    }
  });
});
