// The five verdicts on a choice, in the same words wherever one is shown.
import type { ChoiceReview } from '../../shared-engine/index.ts';

export const VERDICTS = {
  best: { name: 'Best', about: 'Nothing better was found.' },
  'just-as-good': {
    name: 'Just as good',
    about: 'If another choice is better at all, it is too little to matter.',
  },
  'a-little-worse': {
    name: 'A little worse',
    about: 'Something better was there, but the difference is small.',
  },
  costly: { name: 'Costly', about: 'Something clearly better was there. Look at this one.' },
  'cant-say': { name: 'Can’t say', about: 'The choices are too close to tell apart.' },
} as const;

export type VerdictName = keyof typeof VERDICTS;

/** In wins per 100 games: from here on a loss is costly. */
const COSTLY_WINS = 3;

/** In tiles, for a choice that has not been played on. */
const SMALL_TILES = 0.05;
const COSTLY_TILES = 0.8;

/** From the deep analysis where there is one, from the loss in tiles until then. */
export function verdictNameOf({ loss, analysis }: Pick<ChoiceReview, 'loss' | 'analysis'>): VerdictName {
  if (analysis.depth === 'quick') return verdictByTiles(loss);
  switch (analysis.verdict) {
    case 'as-good':
      return analysis.loss === null || analysis.loss.value <= 0 ? 'best' : 'just-as-good';
    case 'undecided':
      return 'cant-say';
    case 'better-exists':
      return analysis.loss !== null && analysis.loss.value >= COSTLY_WINS ? 'costly' : 'a-little-worse';
  }
}

function verdictByTiles(loss: number): VerdictName {
  if (loss === 0) return 'best';
  if (loss < SMALL_TILES) return 'just-as-good';
  return loss < COSTLY_TILES ? 'a-little-worse' : 'costly';
}
