// One real review, made once and used for every seat: the simulation checks only where it is sent.
import { simplestLegal } from '../../server/workers/bots.ts';
import type { Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { finishRound } from '../../shared-engine/bots/finish-round.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { seedNamed } from '../kit/rounds.ts';

const { round } = finishRound(
  begin(openRound({ seed: seedNamed('sample review'), dealer: 0 }, { revealRacks: false })),
  simplestLegal,
);
const sample = reviewRound(seatView(round, 0).record, createSwarKernel(houseCard()));

export function reviewOf(seat: Seat): Review {
  return { ...sample, seat };
}
