// The cards the server plays with: the house card, compiled once, and card files of rooms' owners.
import { createHash } from 'node:crypto';
import { compileCard, createKernel, HOUSE_CARD, houseCard } from '../../shared-engine/index.ts';
import type { PlayingCard } from '../ports.ts';
import type { CardChoice } from '../room/card-choice.ts';
import { type CardSlip, HOUSE_SLIP } from './task.ts';

const house: PlayingCard = {
  key: HOUSE_SLIP.key,
  file: HOUSE_CARD,
  card: houseCard(),
  kernel: createKernel(houseCard()),
};

/** The card as bots and reviews need it; a room keeps it as long as it is at work. */
export function playingCard(choice: CardChoice): PlayingCard {
  if (choice.kind === 'house') return house;
  const card = compileCard(choice.file);
  const key = createHash('sha256').update(JSON.stringify(choice.file)).digest('hex');
  return { key, file: choice.file, card, kernel: createKernel(card) };
}

/** The card as a task names it. */
export function slipFor({ key, file }: PlayingCard): CardSlip {
  return key === HOUSE_SLIP.key ? HOUSE_SLIP : { key, file };
}
