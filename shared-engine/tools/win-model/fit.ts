// Fits the numbers of a win model to games.
import { preparePlayCard } from '../../analysis/play/play-card.ts';
import { createFeatures, FEATURES, type FeatureName } from '../../analysis/win-probability/features.ts';
import type { WinModel } from '../../analysis/win-probability/model-format.ts';
import type { ReachSteps } from '../../analysis/win-probability/reach.ts';
import { SEATS } from '../../rules/deal/seat.ts';
import { type ChoiceSet, type ConditionalFit, fitConditional } from './conditional-logit.ts';
import type { CardSamples } from './samples.ts';

/** Columns beside the features: a one for each place but the dealer's, and two for the wall. */
const PLACES = 3;
const COLUMNS = FEATURES.length + PLACES + 2;

/** About the middle of the centers of cards of all sizes, so that the two columns of the wall are nearly independent. */
const MIDDLE = 22;

const FIRST_STEPS: ReachSteps = { tile: 8, pair: 1, pairs: 7, concealed: 9 };

function choiceSets(games: readonly CardSamples[], steps: ReachSteps): ChoiceSet[] {
  return games.flatMap(({ card, samples }) => {
    const features = createFeatures(preparePlayCard(card), steps);
    const wall = new Float64Array(COLUMNS);
    wall.set([1, features.center - MIDDLE], COLUMNS - 2);
    return samples.map(({ racks, dealer, won }): ChoiceSet => {
      const rows = SEATS.map((seat) => {
        const row = new Float64Array(COLUMNS);
        row.set(features.of(racks[seat]));
        const place = (seat + 4 - dealer) % 4;
        if (place > 0) row[FEATURES.length + place - 1] = 1;
        return row;
      });
      return { rows: [...rows, wall], chosen: won };
    });
  });
}

export function fitTo(games: readonly CardSamples[], steps: ReachSteps): ConditionalFit {
  return fitConditional(choiceSets(games, steps));
}

/** Searches for the steps under which the games are likeliest, changing one of them by one quarter at a time. */
export function bestSteps(games: readonly CardSamples[], tried: (steps: ReachSteps) => void): ReachSteps {
  const likelihoodOf = (steps: ReachSteps): number => {
    tried(steps);
    return fitTo(games, steps).logLikelihood;
  };
  let best = FIRST_STEPS;
  let most = likelihoodOf(best);
  for (let moved = true; moved; ) {
    moved = false;
    for (const name of ['tile', 'pair', 'pairs', 'concealed'] as const) {
      for (const by of [1, -1]) {
        const steps = { ...best, [name]: best[name] + by };
        if (steps[name] < 0) continue;
        const likelihood = likelihoodOf(steps);
        if (likelihood <= most) continue;
        best = steps;
        most = likelihood;
        moved = true;
      }
    }
  }
  return best;
}

/** The whole model but where it came from. */
export function fitModel(games: readonly CardSamples[], steps: ReachSteps): Omit<WinModel, 'made'> {
  const fitted = fitTo(games, steps).coefficients.map((value) => Math.round(value * 1e6) / 1e6);
  const [first, second, third, start, center] = fitted.slice(FEATURES.length);
  return {
    steps,
    weights: Object.fromEntries(FEATURES.map((name, at) => [name, fitted[at]!])) as Record<
      FeatureName,
      number
    >,
    dealerOffsets: [0, first!, second!, third!],
    wall: { start: Math.round((start! - center! * MIDDLE) * 1e6) / 1e6, center: center! },
  };
}
