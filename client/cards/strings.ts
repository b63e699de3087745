// What the card says.
import { tileList } from '../tiles/tile-names.ts';
import type { CardMatch, TileStatus } from './card-matches.ts';

export const CARD = {
  title: 'The card',
  loading: 'Getting the card…',
  failed: 'The card cannot be fetched just now.',
  order: 'Order of the hands',
  nearest: 'Closest first',
  printed: 'By section',
  more: 'Show the other hands',
  legend: 'Tiles you hold are bright. A ring shows where your joker can stand in. Tiles you need are faint.',
} as const;

/** `3 away · 25 points · concealed`. */
export function matchSummary({ toGo, points, concealed }: CardMatch): string {
  const parts = [toGo === 0 ? 'complete' : `${toGo} away`, `${points} points`];
  return (concealed ? [...parts, 'concealed'] : parts).join(' · ');
}

/** For those who do not see the picture: what is held and what is missing. */
export function matchDescription({ tiles }: CardMatch): string {
  const of = (status: TileStatus) => tiles.filter((tile) => tile.status === status).map(({ face }) => face);
  const jokers = of('joker').length;
  return `You hold ${tileList(of('held'))}${jokers > 0 ? ` and ${jokers} by joker` : ''}. Missing: ${tileList(
    of('missing'),
  )}.`;
}
