// Deals worth a lesson: those where the review finds a pass that is clearly better than the usual one.
import { chooseFor } from '../bots/choose.ts';
import { playOut } from '../bots/play-out.ts';
import type { PreparedDeal } from '../deal/deal.ts';
import type { Seat } from '../deal/seat.ts';
import { openRound } from '../exchange/decide.ts';
import { begin } from '../exchange/evolve.ts';
import type { MoveStep } from '../exchange/schedule.ts';
import type { Kernel } from '../rack/kernel.ts';
import type { Review } from '../review/review.ts';
import { reviewRound } from '../review/review-round.ts';
import type { Face } from '../tiles/face.ts';
import type { SeatRecord } from '../view/record.ts';
import { seatView } from '../view/view.ts';
import { isCostly } from './costly.ts';
import type { Drill } from './format.ts';
import { botsAround, prepareDeal } from './prepare.ts';
import { usualChoice } from './usual.ts';

/** A pass that somebody played and for which a clearly better one is known. */
export interface BetterPass {
  readonly step: MoveStep;
  readonly played: readonly Face[];
  readonly better: readonly Face[];
  /** In tiles, or in points of outlook where the pass was judged deeply. */
  readonly loss: number;
  readonly unit: 'tiles' | 'points';
}

/** Whoever can review a record; what takes long may be put behind it too. */
export type PassJudge = (record: SeatRecord) => Review;

export function quickJudge(kernel: Kernel): PassJudge {
  return (record) => reviewRound(record, kernel);
}

/** The passes of a review that clearly had a better one, each by the deepest judgement it has. */
export function betterPasses({ choices, basis }: Review): readonly BetterPass[] {
  return choices.flatMap((choice): BetterPass[] => {
    if (choice.kind !== 'pass' || !isCostly(choice, basis)) return [];
    const { step, judgement, loss } = choice;
    const pass = { step, played: choice.played.tiles };
    if (judgement.depth === 'quick') return [{ ...pass, better: choice.best.tiles, loss, unit: 'tiles' }];
    const rival = judgement.rival === null ? null : judgement.finalists[judgement.rival];
    return rival ? [{ ...pass, better: rival.tiles, loss: rival.ahead.value, unit: 'points' }] : [];
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
  const { seat, dealer, bots, steps } = lookout;
  return seeds.flatMap((seed) => {
    const tiles = { kind: 'random', seed } as const;
    const prepared = prepareDeal({ bots }, { id: 'looked-at', seat, dealer, tiles }, kernel);
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
