// The cards the server plays with: the house card, compiled once, and card files of rooms' owners.
import { compileCard, createKernel, HOUSE_CARD, houseCard } from '../../shared-engine/index.ts';
import type { PlayingCard } from '../ports.ts';
import type { CardChoice } from '../room/event.ts';

const house: PlayingCard = { file: HOUSE_CARD, card: houseCard(), kernel: createKernel(houseCard()) };

/** The card as bots and reviews need it; a room keeps it as long as it is at work. */
export function playingCard(choice: CardChoice): PlayingCard {
  if (choice.kind === 'house') return house;
  const card = compileCard(choice.file);
  return { file: choice.file, card, kernel: createKernel(card) };
}
