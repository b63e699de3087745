// A real review to send about: made once, for any seat, because here only its way matters.

import { simplestLegal } from '../../server/work/bots.ts';
import {
  begin,
  createKernel,
  houseCard,
  openRound,
  playOut,
  type Review,
  reviewRound,
  type Seat,
  seatView,
} from '../../shared-engine/index.ts';
import { seedNamed } from '../kit/rounds.ts';

const { round } = playOut(
  begin(openRound({ seed: seedNamed('sample review'), dealer: 0 }, { layOpen: false })),
  simplestLegal,
);
const sample = reviewRound(seatView(round, 0).record, createKernel(houseCard()));

export function reviewOf(seat: Seat): Review {
  return { ...sample, seat };
}
