// Finds deals with a lesson in them: those where a pass is clearly better than the typical one.
import {
  type Analyst,
  analyzeDecision,
  DEEP_BUDGET,
  isCostly,
  namedAlternative,
  type Review,
  reviewRound,
  SHALLOW_BUDGET,
  type Verdict,
  withDeepAnalysis,
} from '../analysis/index.ts';
import { chooseFor, finishRound } from '../bots/index.ts';
import type { Kernel } from '../kernels/index.ts';
import {
  begin,
  type Face,
  type MoveStep,
  openRound,
  type PreparedDeal,
  type Seat,
  type SeatRecord,
  seatView,
} from '../rules/index.ts';
import type { Drill, DrillDeal } from './format.ts';
import { botsAround, prepareDeal } from './prepare.ts';
import { typicalChoice } from './typical.ts';

/** A pass that was played although a clearly better one is known. */
export interface BetterPass {
  readonly step: MoveStep;
  readonly played: readonly Face[];
  readonly better: readonly Face[];
  /** In tiles to go, or in wins of 100 games where the pass has its deep analysis. */
  readonly loss: number;
  /** Half the width of the loss's 95 % interval; 0 where the loss is no estimate from a sample. */
  readonly halfWidth: number;
  readonly unit: 'tiles' | 'wins';
}

/** Reviews the record of a seat; may be quick or take long. */
export type PassReviewer = (record: SeatRecord) => Review;

export function quickReviewer(kernel: Kernel): PassReviewer {
  return (record) => reviewRound(record, kernel);
}

/** Seed of the sampled deals in the second analysis; any number but the seed of the first would do. */
const SECOND_ANALYSIS_SEED = 0x2d7;

/**
 * Analyzes the passes of these steps by rollouts: each with a small budget, and a pass that then seems clearly worse
 * again with a large budget and other sampled deals. Without the second analysis a search over many deals would find
 * the one where chance favored the better pass most.
 */
export function deepReviewer(analyst: Analyst, kernel: Kernel, steps: readonly MoveStep[]): PassReviewer {
  return (record) => {
    const last = record.steps.findLastIndex((step) => step.kind === 'move' && steps.includes(step.step));
    // Later steps add nothing to what was known at the last of these steps.
    const known = { ...record, steps: record.steps.slice(0, last + 1) };
    const first = reviewRound(known, kernel);
    return first.choices.reduce((review, { kind, step }, nth) => {
      if (kind !== 'pass' || !steps.includes(step)) return review;
      const look = analyzeDecision(analyst, known, nth, { budget: SHALLOW_BUDGET });
      const again = look.verdict === 'costly';
      return withDeepAnalysis(
        review,
        nth,
        again
          ? analyzeDecision(analyst, known, nth, { budget: DEEP_BUDGET, seed: SECOND_ANALYSIS_SEED })
          : look,
      );
    }, first);
  };
}

/** The passes of a review that clearly had a better one, each by the deepest analysis it has. */
export function betterPasses({ choices }: Review): readonly BetterPass[] {
  return choices.flatMap((choice): BetterPass[] => {
    if (choice.kind !== 'pass' || !isCostly(choice)) return [];
    const { step, analysis, loss } = choice;
    const pass = { step, played: choice.played.tiles };
    if (analysis.depth === 'quick')
      return [{ ...pass, better: choice.best.tiles, loss, halfWidth: 0, unit: 'tiles' }];
    const rival = analysis.bestAlternative === null ? null : analysis.finalists[analysis.bestAlternative];
    if (!rival) return [];
    const { value, halfWidth } = rival.difference;
    return [{ ...pass, better: rival.tiles, loss: value, halfWidth, unit: 'wins' }];
  });
}

export interface InterestingDeal {
  readonly seed: string;
  /** In the order of the round, at least one. */
  readonly better: readonly BetterPass[];
}

export interface DealSearch {
  readonly seat: Seat;
  readonly dealer: Seat;
  /** The bots of the drill: what arrives depends on them. */
  readonly bots: Drill['bots'];
  /** Only passes of these steps count; null for all. */
  readonly steps: readonly MoveStep[] | null;
  /** What the tiles of the deals should be, with any seed; missing for random deals. */
  readonly tiles?: DrillDeal['tiles'];
}

/**
 * The deals of these seeds in which the typical exchange of the seat has a pass with a clearly better one, in the
 * order of the seeds. Each seed costs an exchange and its review.
 */
export function interestingDeals(
  seeds: readonly string[],
  dealSearch: DealSearch,
  kernel: Kernel,
  review: PassReviewer,
): readonly InterestingDeal[] {
  const { seat, dealer, bots, steps, tiles = { kind: 'random', seed: '' } } = dealSearch;
  return seeds.flatMap((seed) => {
    const deal = { id: 'candidate', seat, dealer, tiles: { ...tiles, seed } };
    const prepared = prepareDeal({ bots }, deal, kernel);
    if (!prepared.ok) return [];
    const record = typicalRecord(prepared.deal, dealSearch, kernel);
    const better = betterPasses(review(record)).filter(({ step }) => steps?.includes(step) ?? true);
    return better.length > 0 ? [{ seed, better }] : [];
  });
}

/** The first pass that most would make from a deal's rack, as the judge sees it. */
export interface JudgedPass {
  readonly played: readonly Face[];
  /** Null where nothing better is known. */
  readonly better: readonly Face[] | null;
  readonly verdict: Verdict;
  readonly sentences: readonly string[];
}

/** Plays the pass and its alternatives on many times. */
export function judgedFirstPass(
  deal: PreparedDeal,
  at: Pick<DealSearch, 'seat' | 'bots'>,
  kernel: Kernel,
  analyst: Analyst,
): JudgedPass | null {
  const record = typicalRecord(deal, at, kernel);
  const known = { ...record, steps: record.steps.slice(0, 1) };
  const first = reviewRound(known, kernel);
  const nth = first.choices.findIndex(({ kind }) => kind === 'pass');
  if (nth === -1) return null;
  const review = withDeepAnalysis(first, nth, analyzeDecision(analyst, known, nth, { budget: DEEP_BUDGET }));
  const [choice, told] = [review.choices[nth], review.story.choices[nth]];
  if (choice?.kind !== 'pass' || told === undefined) return null;
  const { verdict, sentences } = told;
  const isWorse = verdict === 'costly' || verdict === 'a-little-worse';
  const better = isWorse ? (namedAlternative(choice)?.tiles ?? null) : null;
  return { played: choice.played.tiles, better, verdict, sentences };
}

function typicalRecord(
  deal: PreparedDeal,
  { seat, bots }: Pick<DealSearch, 'seat' | 'bots'>,
  kernel: Kernel,
): SeatRecord {
  const styles = botsAround(seat, bots);
  const { round } = finishRound(begin(openRound(deal, { revealRacks: false })), (view, random) => {
    const style = styles[view.record.seat];
    return style ? chooseFor(style, view, kernel, random) : typicalChoice(view, kernel, random);
  });
  return seatView(round, seat).record;
}
