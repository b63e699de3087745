// What the server's own thread plays and reviews with: the house card, which is compiled when the server starts.
import { createSwarKernel, houseCard, type Kernel } from '../../shared-engine/index.ts';
import { HOUSE_CARD_KEY } from '../playing-card.ts';
import type { PlayingCard } from '../ports.ts';

const house = createSwarKernel(houseCard());

/** Null where only workers have the card: compiling a card of somebody's own would hold up every table. */
export function kernelInProcess({ key }: PlayingCard): Kernel | null {
  return key === HOUSE_CARD_KEY ? house : null;
}
