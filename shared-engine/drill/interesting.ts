// Deals worth a lesson: those where the review finds a pass that is clearly better than the usual one.

import type { Analyst } from '../analysis/comparison/analyse.ts';
import { DEEP, SHALLOW } from '../analysis/comparison/budget.ts';
import { judgeDeeply, withJudgement } from '../analysis/review/deepen.ts';
import type { Review } from '../analysis/review/review.ts';
import { reviewRound } from '../analysis/review/review-round.ts';
import { chooseFor } from '../bots/choose.ts';
import { playOut } from '../bots/play-out.ts';
import type { Kernel } from '../kernels/tiles-to-go/kernel.ts';
import type { PreparedDeal } from '../rules/deal/deal.ts';
import type { Seat } from '../rules/deal/seat.ts';
import { openRound } from '../rules/exchange/decide.ts';
import { begin } from '../rules/exchange/evolve.ts';
import type { MoveStep } from '../rules/exchange/schedule.ts';
import type { Face } from '../rules/tiles/face.ts';
import type { SeatRecord } from '../rules/view/record.ts';
import { seatView } from '../rules/view/view.ts';
import { isCostly } from './costly.ts';
import type { Drill, DrillDeal } from './format.ts';
import { botsAround, prepareDeal } from './prepare.ts';
import { usualChoice } from './typical.ts';

/** A pass that somebody played and for which a clearly better one is known. */
export interface BetterPass {
  readonly step: MoveStep;
  readonly played: readonly Face[];
  readonly better: readonly Face[];
  /** In tiles, or in points of outlook where the pass was judged deeply. */
  readonly loss: number;
  /** Half of the 95 % interval of the loss; 0 where it is none of a sample. */
  readonly within: number;
  readonly unit: 'tiles' | 'points';
}

/** Whoever can review a record; what takes long may be put behind it too. */
export type PassJudge = (record: SeatRecord) => Review;

export function quickJudge(kernel: Kernel): PassJudge {
  return (record) => reviewRound(record, kernel);
}

/** Draws the worlds of the second look; any number but the first look's own would do. */
const SECOND_LOOK = 0x2d7;

/**
 * Plays the passes of these steps on: each on a small budget, and what then seems clearly better once more on a large
 * one and in worlds of its own. Of many deals the one where chance favoured the better pass most would otherwise be
 * the one that is found.
 */
export function closeJudge(analyst: Analyst, kernel: Kernel, steps: readonly MoveStep[]): PassJudge {
  return (record) => {
    const last = record.steps.findLastIndex((step) => step.kind === 'move' && steps.includes(step.step));
    // What came after the last of these steps changes nothing of what was known at it.
    const known = { ...record, steps: record.steps.slice(0, last + 1) };
    const first = reviewRound(known, kernel);
    return first.choices.reduce((review, { kind, step }, nth) => {
      if (kind !== 'pass' || !steps.includes(step)) return review;
      const look = judgeDeeply(analyst, known, nth, SHALLOW);
      const again = look.verdict === 'better-exists';
      return withJudgement(review, nth, again ? judgeDeeply(analyst, known, nth, DEEP, SECOND_LOOK) : look);
    }, first);
  };
}

/** The passes of a review that clearly had a better one, each by the deepest judgement it has. */
export function betterPasses({ choices, basis }: Review): readonly BetterPass[] {
  return choices.flatMap((choice): BetterPass[] => {
    if (choice.kind !== 'pass' || !isCostly(choice, basis)) return [];
    const { step, judgement, loss } = choice;
    const pass = { step, played: choice.played.tiles };
    if (judgement.depth === 'quick')
      return [{ ...pass, better: choice.best.tiles, loss, within: 0, unit: 'tiles' }];
    const rival = judgement.rival === null ? null : judgement.finalists[judgement.rival];
    if (!rival) return [];
    const { value, within } = rival.ahead;
    return [{ ...pass, better: rival.tiles, loss: value, within, unit: 'points' }];
  });
}

export interface InterestingDeal {
  readonly seed: string;
  /** In the order of the round, at least one. */
  readonly better: readonly BetterPass[];
}

export interface Lookout {
  readonly seat: Seat;
  readonly dealer: Seat;
  /** Those of the drill that the deal is wanted for: what arrives later depends on them. */
  readonly bots: Drill['bots'];
  /** Only passes of these steps count; null for all. */
  readonly steps: readonly MoveStep[] | null;
  /** What the deals are to be like, whatever its own seed; missing for deals by chance. */
  readonly tiles?: DrillDeal['tiles'];
}

/**
 * Of the deals of these seeds those in which the usual exchange of the seat has a pass with a clearly better one,
 * in the order of the seeds. Each seed costs an exchange and a review of it.
 */
export function interestingDeals(
  seeds: readonly string[],
  lookout: Lookout,
  kernel: Kernel,
  judge: PassJudge,
): readonly InterestingDeal[] {
  const { seat, dealer, bots, steps, tiles = { kind: 'random', seed: '' } } = lookout;
  return seeds.flatMap((seed) => {
    const deal = { id: 'looked-at', seat, dealer, tiles: { ...tiles, seed } };
    const prepared = prepareDeal({ bots }, deal, kernel);
    if (!prepared.ok) return [];
    const record = usualRecord(prepared.deal, lookout, kernel);
    const better = betterPasses(judge(record)).filter(({ step }) => steps?.includes(step) ?? true);
    return better.length > 0 ? [{ seed, better }] : [];
  });
}

function usualRecord(deal: PreparedDeal, { seat, bots }: Lookout, kernel: Kernel): SeatRecord {
  const styles = botsAround(seat, bots);
  const { round } = playOut(begin(openRound(deal, { layOpen: false })), (view, random) => {
    const style = styles[view.record.seat];
    return style ? chooseFor(style, view, kernel, random) : usualChoice(view, kernel, random);
  });
  return seatView(round, seat).record;
}
