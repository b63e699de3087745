// What the server's own thread plays and reviews with: the house card, which is compiled when the server starts.
import { createSwarKernel, houseCard, type Kernel } from '../../shared-engine/index.ts';
import { HOUSE_CARD_KEY } from '../playing-card.ts';
import type { PlayingCard } from '../ports.ts';

/** The kernel of a card in this thread; null where only workers have it. */
export type KernelOf = (card: PlayingCard) => Kernel | null;

const house = createSwarKernel(houseCard());

/** Compiling a card of somebody's own would hold up every table. */
export const houseKernelOnly: KernelOf = ({ key }) => (key === HOUSE_CARD_KEY ? house : null);
