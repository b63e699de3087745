// One real review, made once and used for every seat: the simulation checks only where it is sent.

import { simplestLegal } from '../../server/workers/bots.ts';
import {
  begin,
  createSwarKernel,
  finishRound,
  houseCard,
  openRound,
  type Review,
  reviewRound,
  type Seat,
  seatView,
} from '../../shared-engine/index.ts';
import { seedNamed } from '../kit/rounds.ts';

const { round } = finishRound(
  begin(openRound({ seed: seedNamed('sample review'), dealer: 0 }, { revealRacks: false })),
  simplestLegal,
);
const sample = reviewRound(seatView(round, 0).record, createSwarKernel(houseCard()));

export function reviewOf(seat: Seat): Review {
  return { ...sample, seat };
}
