// What the card says.
import type { Face } from '../../shared-engine/index.ts';
import { tileList, tileName } from '../tiles/tile-names.ts';
import { type CardMatch, goneFrom, type TileStatus } from './card-matches.ts';

export const CARD = {
  title: 'The card',
  loading: 'Getting the card…',
  failed: 'The card cannot be fetched just now.',
  order: 'Order of the hands',
  nearest: 'Likeliest first',
  working: 'Looking which hands are reached most often…',
  section: 'Section',
  allSections: 'All sections',
  close: 'Close',
  printed: 'In its own order',
  more: 'Show the other hands',
  nearestAbout:
    'First come the hands that were reached most often when we played on from your rack many times. A hand farther away can come first where jokers and discards help it.',
  legend: 'Tiles you hold are bright. A ring shows where your joker can stand in. Tiles you need are faint.',
} as const;

const NUMBERS = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'] as const;

/** `8 away · one by joker · 25 points · concealed · two 6 crak already gone`; of jokers only where one stands in. */
export function matchSummary(match: CardMatch, gone: readonly Face[]): string {
  const { toGo, points, concealed, tiles } = match;
  const jokers = tiles.filter(({ status }) => status === 'joker').length;
  return [
    toGo === 0 ? 'complete' : `${toGo} away`,
    ...(jokers > 0 ? [`${NUMBERS[jokers] ?? jokers} by joker`] : []),
    `${points} points`,
    ...(concealed ? ['concealed'] : []),
    ...goneWords(goneFrom(match, gone)),
  ].join(' · ');
}

function goneWords(gone: readonly Face[]): readonly string[] {
  return [...new Set(gone)].map((face) => {
    const count = gone.filter((other) => other === face).length;
    return `${NUMBERS[count] ?? count} ${tileName(face)} already gone`;
  });
}

/** For those who do not see the picture: what is held and what is missing. */
export function matchDescription({ tiles }: CardMatch): string {
  const of = (status: TileStatus) => tiles.filter((tile) => tile.status === status).map(({ face }) => face);
  const jokers = of('joker').length;
  return `You hold ${tileList(of('held'))}${jokers > 0 ? ` and ${jokers} by joker` : ''}. Missing: ${tileList(
    of('missing'),
  )}.`;
}
