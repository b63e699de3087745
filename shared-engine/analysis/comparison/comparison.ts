// The finalists on fresh deals, one interim analysis after another, until the choice is decided or the deals run out.
import type { Alternative } from './alternatives.ts';
import type { Estimate } from './estimate.ts';
import { always, type DealAction, type DealSource } from './sampled-deals.ts';
import type { Screened } from './screen.ts';
import {
  addResults,
  createSeries,
  differenceBetween,
  giveawayOf,
  immediateDifference,
  ownWinProbability,
  type Series,
  SHOWN_TAIL,
} from './series.ts';
import { type ComparedVerdict, SMALL_LOSS, verdictOf } from './verdict.ts';

/** Batches are numbered from here on, far from those of the screening. */
const FIRST_FRESH_BATCH = 0x1_0000;

/** Chance that any of the intervals behind a verdict, over all alternatives and interim analyses, misses. */
const VERDICT_ERROR = 0.05;

/** Chance that an alternative as good as the leader is shown to be behind it, over all of them. */
const LEADER_ERROR = 0.025;

/** So many among the best are few enough; more are told apart a while longer, even where the verdict has fallen. */
const FEW = 5;
const TELLING_APART_BATCHES = 128;

/** So many alternatives go on where a better one seems to exist and is not shown yet: any of them would do. */
const DECIDING = 3;

/**
 * Batches × alternatives at most: where few alternatives are left the comparison goes further than where many are as
 * good as each other.
 */
const MAX_WORK = 11_000;

export interface ComparedAlternative {
  readonly alternative: Alternative;
  /** Own win probability at the close. */
  readonly winProbability: Estimate;
  /** By how much it is better than the choice made; 0 ± 0 for the choice itself. */
  readonly difference: Estimate;
  /** The same right after the step, before anybody passes again. */
  readonly immediateDifference: Estimate;
  /** What the receiver's win probability gains over an average pass; null where nothing is given. */
  readonly giveaway: Estimate | null;
  /** Not shown to be behind the leader of the screening. */
  readonly amongBest: boolean;
}

export interface Comparison {
  readonly verdict: ComparedVerdict;
  /** In the order of the screening; the choice made is among them. */
  readonly finalists: readonly ComparedAlternative[];
  readonly chosen: ComparedAlternative;
  /** The alternative that is spoken of: the leader of the screening, or the one that the verdict rests on. */
  readonly bestAlternative: ComparedAlternative | null;
  /** Own win probability after a legal pass drawn at random; null where nothing is given. */
  readonly averagePass: Estimate | null;
  readonly batches: number;
}

export interface ComparisonTask {
  readonly seat: number;
  /** Who gets the tiles; null where nothing is given. */
  readonly receiver: number | null;
  readonly screened: Screened;
  readonly chosen: Alternative;
  /** A legal pass drawn at random in each deal; null where nothing is given. */
  readonly averagePass: DealAction | null;
  /** Batches at each interim analysis, counted from the start. */
  readonly interimAnalyses: readonly number[];
}

export function compare(source: DealSource, task: ComparisonTask): Comparison {
  const { screened, chosen, averagePass, interimAnalyses } = task;
  const all = screened.finalists.map((alternative, n) => createSeries(alternative, screened.controls[n]));
  const played = all.find(({ alternative }) => alternative === chosen)!;
  const others = all.filter((series) => series !== played);
  const average = createSeries(chosen);
  const tail = VERDICT_ERROR / 2 / Math.max(1, interimAnalyses.length * others.length);
  const leader = all[0]!;
  const isAmongBest = (series: Series): boolean => {
    if (series === leader) return true;
    const behind = differenceBetween(leader, series, LEADER_ERROR / Math.max(1, others.length));
    return behind.value - behind.halfWidth <= 0;
  };
  let verdict: ComparedVerdict = 'undecided';
  let batches = 0;
  let work = 0;
  for (const planned of interimAnalyses) {
    const running = all.filter((series) => series.running);
    const tried = averagePass === null ? running : [...running, average];
    const until = Math.min(planned, batches + Math.floor((MAX_WORK - work) / tried.length));
    if (until <= batches) break;
    rollOut(source, task, tried, { first: FIRST_FRESH_BATCH + batches, batches: until - batches });
    work += (until - batches) * tried.length;
    batches = until;
    const differences = others.map((other) => differenceBetween(other, played, tail));
    if (verdict === 'undecided') verdict = verdictOf(differences);
    const best = new Set(all.filter(isAmongBest));
    const tellingApart = batches < TELLING_APART_BATCHES;
    if (verdict !== 'undecided' && (best.size <= FEW || !tellingApart)) break;
    for (const other of needNoMore(others, differences, verdict)) {
      if (other !== leader && !(tellingApart && best.has(other))) other.running = false;
    }
  }
  const finalists = all.map(
    (series): ComparedAlternative => ({
      alternative: series.alternative,
      winProbability: ownWinProbability(series),
      difference:
        series === played ? { value: 0, halfWidth: 0 } : differenceBetween(series, played, SHOWN_TAIL),
      immediateDifference: immediateDifference(series, played),
      giveaway: averagePass === null || task.receiver === null ? null : giveawayOf(series, average),
      amongBest: isAmongBest(series),
    }),
  );
  const named = others.length === 0 ? null : bestOf(others, played, verdict, tail);
  return {
    verdict,
    finalists,
    chosen: finalists[all.indexOf(played)]!,
    bestAlternative: named && finalists[all.indexOf(named)]!,
    averagePass: averagePass === null ? null : ownWinProbability(average),
    batches,
  };
}

/** The average pass, where there is one, is the last of those tried. */
function rollOut(
  source: DealSource,
  { seat, receiver, averagePass }: ComparisonTask,
  tried: readonly Series[],
  range: { readonly first: number; readonly batches: number },
): void {
  const actions = tried.map(({ alternative }) => always(alternative.action));
  if (averagePass !== null) actions[actions.length - 1] = averagePass;
  const results = source.rollOut(range, actions);
  for (const [action, series] of tried.entries()) addResults(series, results, action, { seat, receiver });
}

/**
 * Alternatives that need no more deals: once the verdict has fallen all of them, before that those that are not
 * better than the choice by more than the smallest loss, and all but a few while the best seems to be.
 */
function needNoMore(
  others: readonly Series[],
  differences: readonly Estimate[],
  verdict: ComparedVerdict,
): Series[] {
  if (verdict !== 'undecided') return [...others];
  const running = others.flatMap((other, n) => (other.running ? [{ other, ...differences[n]! }] : []));
  running.sort((a, b) => b.value - a.value);
  const few = running.length > 0 && running[0]!.value > SMALL_LOSS ? DECIDING : running.length;
  return running
    .filter(({ value, halfWidth }, place) => place >= few || value + halfWidth <= SMALL_LOSS)
    .map(({ other }) => other);
}

/** Where a better one is shown to exist, the leader if it is shown to be one, else the surest; otherwise the leader. */
function bestOf(others: readonly Series[], played: Series, verdict: ComparedVerdict, tail: number): Series {
  const sure = others.map((other) => {
    const { value, halfWidth } = differenceBetween(other, played, tail);
    return value - halfWidth;
  });
  if (verdict !== 'better-exists' || sure[0]! > SMALL_LOSS) return others[0]!;
  return others[sure.indexOf(Math.max(...sure))]!;
}
