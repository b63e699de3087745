// Fits the numbers of a win model to games.
import type { PlayCard } from '../../analysis/play/play-card.ts';
import { createFeatures, FEATURES, type FeatureName } from '../../analysis/win-probability/features.ts';
import type { WinModel } from '../../analysis/win-probability/model-format.ts';
import type { ReachSteps } from '../../analysis/win-probability/reach.ts';
import type { Sample } from './games.ts';
import { risingBlocks } from './isotonic.ts';
import { fitLogistic } from './logistic.ts';

export interface CardGames {
  readonly card: PlayCard;
  readonly samples: readonly Sample[];
}

/** Groups that the samples are laid in, by score, before neighbors are pooled: small at both ends, large between. */
const GROUPS = 40;

const FIRST_STEPS: ReachSteps = { tile: 8, pair: 1, pairs: 8, concealed: 9 };

/** One row a sample: the features, then a one for each place but the dealer's. */
function rowsOf(games: readonly CardGames[], steps: ReachSteps): number[][] {
  return games.flatMap(({ card, samples }) => {
    const features = createFeatures(card, steps);
    return samples.map(({ rack, place }) => [
      ...features.of(rack),
      ...[1, 2, 3].map((other) => (place === other ? 1 : 0)),
    ]);
  });
}

function fitTo(games: readonly CardGames[], steps: ReachSteps) {
  const samples = games.flatMap((game) => game.samples);
  const rows = rowsOf(games, steps);
  const hits = samples.map(({ wins }) => wins);
  const trials = samples.map(({ plays }) => plays);
  return { rows, hits, trials, fit: fitLogistic({ rows, hits, trials }) };
}

/** Searches for the steps with the least loss, changing one of them by one quarter at a time. */
export function bestSteps(games: readonly CardGames[], tried: (steps: ReachSteps) => void): ReachSteps {
  const lossOf = (steps: ReachSteps): number => {
    tried(steps);
    return fitTo(games, steps).fit.loss;
  };
  let best = FIRST_STEPS;
  let least = lossOf(best);
  for (let moved = true; moved; ) {
    moved = false;
    for (const name of ['tile', 'pair', 'pairs', 'concealed'] as const) {
      for (const by of [1, -1]) {
        const steps = { ...best, [name]: best[name] + by };
        if (steps[name] < 0) continue;
        const loss = lossOf(steps);
        if (loss >= least) continue;
        best = steps;
        least = loss;
        moved = true;
      }
    }
  }
  return best;
}

/** The whole model but where it came from. */
export function fitModel(games: readonly CardGames[], steps: ReachSteps): Omit<WinModel, 'made'> {
  const { rows, hits, trials, fit } = fitTo(games, steps);
  const rounded = fit.coefficients.map((value) => Math.round(value * 1e6) / 1e6);
  const scores = rows.map((row) => row.reduce((sum, x, i) => sum + x * rounded[i + 1]!, rounded[0]!));
  const start = rounded[0]!;
  const [first, second, third] = rounded.slice(1 + FEATURES.length);
  return {
    steps,
    start,
    weights: weightsOf(rounded.slice(1)),
    dealerOffsets: [0, first!, second!, third!],
    ...calibrate(scores, hits, trials),
  };
}

function weightsOf(values: readonly number[]): Record<FeatureName, number> {
  const [reach, jokers, pairLack, concealed, live] = values;
  return {
    reach: reach!,
    jokers: jokers!,
    pairLack: pairLack!,
    concealed: concealed!,
    live: live!,
  };
}

/** Knots of the rising line from scores to win probabilities in percent. */
function calibrate(scores: readonly number[], hits: readonly number[], trials: readonly number[]) {
  const order = scores.map((_, at) => at).sort((a, b) => scores[a]! - scores[b]!);
  const groups = Array.from({ length: GROUPS }, (_, group) =>
    order.slice(placeOf(group, order.length), placeOf(group + 1, order.length)),
  ).filter((members) => members.length > 0);
  const sum = (of: readonly number[], members: readonly number[]) =>
    members.reduce((total, at) => total + of[at]!, 0);
  const weights = groups.map((members) => sum(trials, members));
  const shares = groups.map((members, group) => sum(hits, members) / weights[group]!);
  const blocks = risingBlocks(shares, weights).map(({ from, to, value }) => {
    const members = groups.slice(from, to).flat();
    return { score: sum(scores, members) / members.length, chance: value * 100 };
  });
  return {
    scores: blocks.map(({ score }) => round(score, 1e5)),
    winProbabilities: blocks.map(({ chance }) => round(chance, 1e4)),
  };
}

/** Where a group begins among so many samples: equal steps of an angle from one end to the other. */
function placeOf(group: number, samples: number): number {
  return Math.round((samples * (1 - Math.cos((Math.PI * group) / GROUPS))) / 2);
}

function round(value: number, scale: number): number {
  return Math.round(value * scale) / scale;
}
