// What is guessed of a neighbor's longest suit, and how it is told where the racks are shown.
import { describe, expect, test } from 'vitest';
import { guessAnswer } from '../../shared-engine/analysis/review/sentences/guess.ts';
import { wholeRoundSentences } from '../../shared-engine/analysis/review/sentences/ledger.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { SAMPLE_LEDGER } from '../kit/fake-analysis.ts';

describe('the surest guess at a neighbor’s longest suit', () => {
  test('is told where it is likely enough', () => {
    const told = (bam: number, crak: number): string =>
      wholeRoundSentences(
        {
          ...SAMPLE_LEDGER,
          neighbors: [
            { toward: 'right', longest: { bam: 0.3, crak: 0.4, dot: 0.2 } },
            { toward: 'across', longest: { bam, crak, dot: 0.1 } },
          ],
        },
        { fed: null, back: [], firstDiscard: null },
      ).join(' ');
    expect(told(0.62, 0.2)).toBe(
      'The passes hint that the player across ended with more bams than craks or dots. The chances of that are about 6 in 10; as a rule they are 3 in 10.',
    );
    expect(told(0.2, 0.62)).toContain('more craks than bams or dots');
    expect(told(0.49, 0.4)).toBe('');
  });

  test('is told to be right or not where the racks are shown, with how many there were', () => {
    const neighbors = (bam: number) => [{ toward: 'across', longest: { bam, crak: 0.1, dot: 0.1 } }] as const;
    const rack = (...faces: readonly Face[]) => faces;
    const nobody = rack('joker');
    const answer = (held: readonly Face[], bam = 0.6) =>
      guessAnswer(neighbors(bam), 3, [nobody, held, nobody, nobody]);
    const guess =
      'We guessed that the player across ended with more bams than craks or dots. By the racks at the close that was';
    expect(answer(['bam-1', 'bam-9', 'dot-3', 'joker'])).toBe(`${guess} right: 2 bams, no craks and 1 dot.`);
    expect(answer(['bam-1', 'dot-3', 'red'])).toBe(`${guess} not right: 1 bam, no craks and 1 dot.`);
    expect(answer(['bam-1'], 0.49)).toBeNull();
  });
});
