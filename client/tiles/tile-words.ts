// Tiles named in plain words, found in a text: `2 bam`, `soap`, `red dragon`, `east wind`.
import { FACES, type Face } from '../../shared-engine/index.ts';

/** A piece of a text: words as they were written, or a tile with the words that name it. */
export type TextPart =
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'tile'; readonly text: string; readonly face: Face };

/** One tile, not several: `2 bams` may be two of them, and `east` alone is a seat as often as a wind. */
const NAMED =
  /(?<![\p{L}\p{N}–-])(?:([1-9])[ -]?(bam|crak|crack|dot)|(east|south|west|north) wind|(red|green|white) dragon|(soap)|(flower|joker))(?![\p{L}\p{N}])/giu;

/** The text again, in pieces (rule T6). */
export function partsOfText(text: string): readonly TextPart[] {
  const parts: TextPart[] = [];
  let from = 0;
  const words = (to: number) => {
    if (to > from) parts.push({ kind: 'words', text: text.slice(from, to) });
  };
  for (const match of text.matchAll(NAMED)) {
    const face = faceNamed(match);
    if (face === undefined) continue;
    words(match.index);
    parts.push({ kind: 'tile', text: match[0], face });
    from = match.index + match[0].length;
  }
  words(text.length);
  return parts;
}

function faceNamed([, number, suit, wind, dragon, soap, other]: RegExpExecArray): Face | undefined {
  const suited = suit && `${suit.toLowerCase().replace('crack', 'crak')}-${number}`;
  const name = suited ?? wind ?? dragon ?? (soap && 'white') ?? other;
  return FACES.find((face) => face === name?.toLowerCase());
}
