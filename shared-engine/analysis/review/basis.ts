// How closely the review looks, and from which loss on it speaks up.
import type { Basis } from './review.ts';

export const BASIS: Basis = {
  closely: 24,
  // 36 bundles of three use 108 tiles; a seat has never seen more than 40 of the 144 that can arrive, so one
  // shuffle of the unseen tiles is enough and no tile arrives twice.
  arrivals: 36,
  // Six passes of this loss add up to one and a half tiles, more than half of what separates a strong exchange
  // from passing at random (2.5 tiles). It is also where a sentence, which shows tenths, begins to say 0.3.
  smallLoss: 0.25,
};
