// Deep analyses that were never made: their numbers are the test's, their verdict is what the rule makes of them.
import { NEIGHBOR_STYLES, type Robustness } from '../../shared-engine/analysis/comparison/robustness.ts';
import { VERDICTS, verdictOf } from '../../shared-engine/analysis/comparison/verdict.ts';
import type { DeepAnalysis, Finalist } from '../../shared-engine/analysis/review/analysis.ts';
import type { ChoiceReview } from '../../shared-engine/analysis/review/review.ts';

/**
 * An analysis that obeys the rule of the verdicts, with these numbers: difference and half width of each alternative, in
 * thousandths of a win in 100 games.
 */
export function analysisWith(
  choice: ChoiceReview,
  values: readonly (readonly [number, number])[],
): DeepAnalysis {
  const others = alternativesTo(choice).slice(0, values.length);
  const finalists = [own(choice), ...others].map((one, place): Finalist => {
    const [value, halfWidth] = place === 0 ? [0, 0] : values[place - 1]!;
    return {
      ...one,
      winProbability: { value: 30, halfWidth: 1 },
      difference: { value: value / 1_000, halfWidth: halfWidth / 1_000 },
      giveaway: null,
      amongBest: true,
    };
  });
  const [, named = null] = finalists;
  const told = finalists.slice(1).map(({ difference }) => difference);
  const atMost = Math.max(0, ...told.map(({ value, halfWidth }) => value + halfWidth));
  const most = Math.max(...told.map(({ value }) => value));
  return {
    depth: 'deep',
    verdict: verdictOf({ named: named === null ? null : named.difference, most, atMost }),
    loss: named === null ? null : named.difference,
    atMost,
    giveaway: null,
    played: 0,
    bestAlternative: named === null ? null : 1,
    finalists,
    alternatives: others.length,
    typicalPass: null,
    sampledDeals: 640,
    smallLoss: 1,
    why: null,
    others: null,
  };
}

/** The same where it is costly with what was found among neighbors of each style: places in `VERDICTS`, and losses. */
export function askedAmong(
  analysis: DeepAnalysis,
  found: readonly (readonly [verdict: number, thousandths: number])[],
): DeepAnalysis {
  if (analysis.verdict !== 'costly' || found.length < NEIGHBOR_STYLES.length) return analysis;
  const [casual, typical, strong] = found.map(([verdict]) => VERDICTS[verdict]!) as [Told, Told, Told];
  const verdicts = { casual, typical, strong };
  const lossAt = (nth: number): number =>
    ['costly', 'a-little-worse'].includes(VERDICTS[found[nth]![0]]!) ? found[nth]![1] / 1_000 : 0;
  const losses = { casual: lossAt(0), typical: lossAt(1), strong: lossAt(2) };
  const turns = NEIGHBOR_STYLES.filter((style) => verdicts[style] !== 'costly');
  return { ...analysis, robustness: { verdicts, losses, turns } };
}

type Told = Robustness['verdicts']['casual'];

function own(choice: ChoiceReview): Pick<Finalist, 'tiles' | 'number'> {
  return choice.kind === 'pass'
    ? { tiles: choice.played.tiles, number: null }
    : { tiles: [], number: choice.played };
}

function alternativesTo(choice: ChoiceReview): readonly Pick<Finalist, 'tiles' | 'number'>[] {
  if (choice.kind === 'pass') {
    const { played } = choice;
    return choice.alternatives
      .filter(({ tiles }) => tiles.join() !== played.tiles.join())
      .map(({ tiles }) => ({ tiles, number: null }));
  }
  return choice.options
    .filter(({ value }) => value !== choice.played)
    .map(({ value }) => ({ tiles: [], number: value }));
}
