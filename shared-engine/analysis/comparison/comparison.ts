// The finalists of the search on fresh deals: a sample whose size the search has set gives the verdict and the numbers.
import type { Alternative } from './alternatives.ts';
import type { Budget } from './budget.ts';
import type { Estimate } from './estimate.ts';
import { sampleSize } from './sample-size.ts';
import { always, costThroughReceiver, type DealAction, type DealSource } from './sampled-deals.ts';
import type { Screened } from './screen.ts';
import { normalTail, spendingBounds, spentEvenly } from './sequential.ts';
import {
  addCosts,
  addResults,
  costOf,
  createSeries,
  differenceBetween,
  ownWinProbability,
  type Series,
  SHOWN_TAIL,
  searchedDifference,
} from './series.ts';
import { SMALL_LOSS, type Verdict, verdictOf } from './verdict.ts';

/** Batches are numbered from here on, far from those of the search. */
const FIRST_FRESH_BATCH = 0x1_0000;

/** Chance that an alternative as good as the leader is shown to be behind it, over all of them. */
const LEADER_ERROR = 0.025;

/**
 * After each of these shares of the sample, alternatives that cannot matter any more stop; what club players pass is
 * tried up to the second.
 */
const LOOKS = [1 / 8, 1 / 3, 1 / 2, 3 / 4, 1] as const;
/** Fewer batches say too little. */
const LEAST_LOOKED_AT = 8;
/** How often an upper bound errs at each look, so that it errs as often as one that is shown over all of them. */
const LOOK_TAILS = spendingBounds(LOOKS, 2 * SHOWN_TAIL, spentEvenly).map(normalTail);

export interface ComparedAlternative {
  readonly alternative: Alternative;
  /** Own win probability at the close: that of the choice made, and for the others as much more as they are better. */
  readonly winProbability: Estimate;
  /** By how much it is better than the choice made; 0 ± 0 for the choice itself. */
  readonly difference: Estimate;
  /** What it costs through the receiver, compared with what club players pass; null where nothing is given. */
  readonly giveaway: Estimate | null;
  /** Not shown to be behind the leader of the search. */
  readonly amongBest: boolean;
}

export interface Comparison {
  readonly verdict: Verdict;
  /** In the order of the search; the choice made is among them. */
  readonly finalists: readonly ComparedAlternative[];
  readonly chosen: ComparedAlternative;
  /** The alternative that is spoken of, the most promising one of the search; null where there is none. */
  readonly bestAlternative: ComparedAlternative | null;
  /** No alternative compared is better by more than this; 0 where there is none. */
  readonly atMost: number;
  /** Own win probability after what club players pass; null where nothing is given. */
  readonly typicalPass: Estimate | null;
  /** Of the fresh sample. */
  readonly batches: number;
}

export interface ComparisonTask {
  readonly seat: number;
  /** Who gets the tiles; null where nothing is given. */
  readonly receiver: number | null;
  readonly screened: Screened;
  readonly chosen: Alternative;
  /** In each deal what a club player passes; null where nothing is given. */
  readonly typicalPass: DealAction | null;
  readonly fresh: Budget['fresh'];
}

export function compare(source: DealSource, task: ComparisonTask): Comparison {
  const all = task.screened.finalists.map(createSeries);
  const played = all.find(({ alternative }) => alternative === task.chosen)!;
  const others = all.filter((series) => series !== played);
  const [named] = others;
  const batches = named ? sampleSize(searchedDifference(named, played), task.fresh) : task.fresh.least;
  const typical = createSeries({ ...task.screened.finalists[0]!, own: new Float64Array(0) });
  let first = 0;
  for (const [look, share] of LOOKS.entries()) {
    const until = Math.max(Math.ceil(batches * share), Math.min(batches, LEAST_LOOKED_AT));
    const running = all.filter(({ lastLook }) => lastLook === null);
    rollOut(source, task, running, { first, batches: until - first, typical: look < 2 ? typical : null });
    if (named) stopOthers(running, { named, played, look, share: until / batches });
    first = until;
  }
  const leader = all[0]!;
  const own = ownWinProbability(played);
  const finalists = all.map((series): ComparedAlternative => {
    const differs = series !== played;
    const difference = differs ? differenceBetween(series, played, SHOWN_TAIL) : { value: 0, halfWidth: 0 };
    const { halfWidth } = ownWinProbability(series);
    const behind = differenceBetween(leader, series, LEADER_ERROR / Math.max(1, others.length));
    return {
      alternative: series.alternative,
      // By its difference, which rests on deals of both: some alternatives stopped early, on other deals than the choice.
      winProbability: { value: Math.max(0, own.value + difference.value), halfWidth },
      difference,
      giveaway: task.typicalPass === null || task.receiver === null ? null : costOf(series),
      amongBest: series === leader || behind.value - behind.halfWidth <= 0,
    };
  });
  const bounds = others.map((other) =>
    upperBound(other, played, other === named ? SHOWN_TAIL : LOOK_TAILS[other.lastLook ?? LOOKS.length - 1]!),
  );
  const atMost = Math.max(0, ...bounds);
  const bestAlternative = named === undefined ? null : finalists[all.indexOf(named)]!;
  const difference = bestAlternative?.difference ?? null;
  const most = Math.max(...others.map((other) => finalists[all.indexOf(other)]!.difference.value));
  return {
    verdict: verdictOf({ named: difference, most, atMost }),
    finalists,
    chosen: finalists[all.indexOf(played)]!,
    bestAlternative,
    atMost,
    typicalPass: task.typicalPass === null ? null : ownWinProbability(typical),
    batches,
  };
}

function upperBound(one: Series, other: Series, tail: number): number {
  const { value, halfWidth } = differenceBetween(one, other, tail);
  return value + halfWidth;
}

interface Look {
  readonly named: Series;
  readonly played: Series;
  /** Place in `LOOKS`, and the share of the sample by then. */
  readonly look: number;
  readonly share: number;
}

/** Those that cannot matter any more have seen their last deals. */
function stopOthers(running: readonly Series[], { named, played, look, share }: Look): void {
  const others = running.filter((series) => series !== played && series !== named);
  const plain = isTold(differenceBetween(named, played, SHOWN_TAIL), share);
  // One of them is enough for it that not all can be shown to be at most so much better.
  const isOpen = others.some((other) =>
    endsAbove(differenceBetween(other, played, LOOK_TAILS[look]!), share),
  );
  for (const other of others) {
    if (plain || isOpen || upperBound(other, played, LOOK_TAILS[look]!) <= SMALL_LOSS) other.lastLook = look;
  }
}

/**
 * Whether the alternative spoken of will hardly end without being better, nor without perhaps being better by more than
 * the smallest loss: then the choice is costly or a little worse whatever the others are.
 */
function isTold(difference: Estimate, share: number): boolean {
  const { value, halfWidth } = difference;
  const least = value - halfWidth * Math.sqrt(1 - share);
  return least > halfWidth * Math.sqrt(share) && endsAbove(difference, share);
}

/** Whether its upper bound will hardly end at or below the smallest loss. */
function endsAbove({ value, halfWidth }: Estimate, share: number): boolean {
  return value - halfWidth * Math.sqrt(1 - share) > SMALL_LOSS - halfWidth * Math.sqrt(share);
}

interface FreshRange {
  readonly first: number;
  readonly batches: number;
  /** Where what club players pass is tried as well. */
  readonly typical: Series | null;
}

function rollOut(
  source: DealSource,
  { seat, receiver, typicalPass }: ComparisonTask,
  tried: readonly Series[],
  { first, batches, typical }: FreshRange,
): void {
  if (batches === 0) return;
  const actions = tried.map(({ alternative }) => always(alternative.action));
  const withTypical = typical !== null && typicalPass !== null;
  if (withTypical) actions.push(typicalPass);
  const results = source.rollOut({ first: FIRST_FRESH_BATCH + first, batches }, actions);
  for (const [action, series] of tried.entries()) {
    addResults(series, results, action, seat);
    if (!withTypical || receiver === null) continue;
    addCosts(series, costThroughReceiver(results, [action, tried.length], { seat, receiver }));
  }
  if (withTypical) addResults(typical, results, tried.length, seat);
}
