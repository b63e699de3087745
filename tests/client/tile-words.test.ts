// Tiles that somebody's words name, drawn in the text; all other words as they were written.
import { describe, expect, it } from 'vitest';
import { tileName } from '../../client/tiles/tile-names.ts';
import { partsOfText } from '../../client/tiles/tile-words.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';

describe('tiles in plain words', () => {
  const tilesIn = (text: string) =>
    partsOfText(text).flatMap((part) => (part.kind === 'tile' ? [part.face] : []));

  it('T6 every tile is found by its name, and the text is whole in its pieces', () => {
    for (const face of FACES) expect(tilesIn(`Keep (${tileName(face).split(',')[0]}).`)).toEqual([face]);
    const text = 'Pass 2 Bam, the soap and Red Dragon; an East wind, 3-crack.';
    expect(tilesIn(text)).toEqual(['bam-2', 'white', 'red', 'east', 'crak-3']);
    expect(
      partsOfText(text)
        .map((part) => part.text)
        .join(''),
    ).toBe(text);
  });

  it('T6 other words stay as they were written', () => {
    for (const text of [
      '2 bams and 12 dot',
      'East passes right',
      'a soapy 1-2 bam',
      'flowers, jokers',
      'a red dragonfly',
      '<b>0 bam</b>',
      '',
    ])
      expect(tilesIn(text)).toEqual([]);
  });
});
