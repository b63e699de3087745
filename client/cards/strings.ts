// What the page says about the card.

import { tileList } from '../tiles/tile-names.ts';
import type { CardMatch, TileStatus } from './card-matches.ts';

export const CARD = {
  title: 'The card',
  button: 'Card',
  closed: 'Your class plays without the card.',
  loading: 'Fetching the card…',
  failed: 'The card cannot be fetched just now.',
  order: 'Order of the lines',
  nearest: 'Nearest to your rack',
  printed: 'By family',
  more: 'Show the other lines',
  key: 'Tiles you hold are bright; where a joker of yours can stand in there is a ring; the rest is faint.',
} as const;

export function matchSummary({ toGo, points, concealed }: CardMatch): string {
  const parts = [toGo === 0 ? 'complete' : `${toGo} to go`, `${points} points`];
  return (concealed ? [...parts, 'concealed'] : parts).join(' · ');
}

/** For those who do not see the picture: what is held and what is missing. */
export function matchDescription({ tiles }: CardMatch): string {
  const of = (light: TileStatus) => tiles.filter((tile) => tile.status === light).map(({ face }) => face);
  const jokers = of('joker').length;
  return `You hold ${tileList(of('held'))}${jokers > 0 ? ` and ${jokers} by joker` : ''}; missing ${tileList(
    of('missing'),
  )}.`;
}
