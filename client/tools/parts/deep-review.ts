// A review with all five verdicts in it, made up: what it says matters here only for its length and its look.
import {
  type ChoiceReview,
  type DeepAnalysis,
  type Finalist,
  type Review,
  withDeepAnalysis,
} from '../../../shared-engine/index.ts';

const VERDICTS = ['best', 'costly', 'a-little-worse', 'just-as-good', 'cant-say'] as const;

/** `first`, with a deep analysis of every choice from the place `from` on. */
export function deepened(first: Review, from = 0): Review {
  return first.choices.reduce(
    (review, choice, nth) => (nth < from ? review : withDeepAnalysis(review, nth, analysisOf(choice, nth))),
    first,
  );
}

function analysisOf(choice: ChoiceReview, nth: number): DeepAnalysis {
  const verdict = VERDICTS[nth % VERDICTS.length]!;
  const better = verdict === 'costly' ? 4.2 : verdict === 'a-little-worse' ? 1.3 : -0.4;
  const finalists = [
    ...optionsOf(choice)
      .slice(0, 8)
      .map((option, place) => finalist(option, better - place * 0.9)),
    finalist(playedIn(choice), 0),
  ];
  return {
    depth: 'deep',
    verdict,
    loss: { value: Math.max(0, better), halfWidth: 0.6 },
    atMost: Math.max(0, better) + 0.6,
    giveaway: { value: 0.3, halfWidth: 0.2 },
    played: finalists.length - 1,
    bestAlternative: 0,
    finalists,
    alternatives: finalists.length - 1,
    typicalPass: { value: 22.1, halfWidth: 0.5 },
    sampledDeals: 4096,
    smallLoss: 1,
    why: null,
    others: null,
  };
}

type Option = Pick<Finalist, 'tiles' | 'number'>;

function finalist(option: Option, difference: number): Finalist {
  return {
    ...option,
    winProbability: { value: 22 + difference, halfWidth: 0.5 },
    difference: { value: difference, halfWidth: difference === 0 ? 0 : 0.7 },
    giveaway: null,
    amongBest: difference > -1,
  };
}

function optionsOf(choice: ChoiceReview): readonly Option[] {
  if (choice.kind !== 'pass')
    return choice.options
      .filter(({ value }) => value !== choice.played)
      .map(({ value }) => ({ tiles: [], number: value }));
  return choice.alternatives
    .filter(({ tiles }) => tiles.join() !== choice.played.tiles.join())
    .map(({ tiles }) => ({ tiles, number: null }));
}

function playedIn(choice: ChoiceReview): Option {
  return choice.kind === 'pass'
    ? { tiles: choice.played.tiles, number: null }
    : { tiles: [], number: choice.played };
}
