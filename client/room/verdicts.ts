// The five verdicts on a choice, in the same words wherever one is shown.
import type { ChoiceReview, Verdict } from '../../shared-engine/index.ts';

export const VERDICTS: Readonly<Record<Verdict, { readonly name: string; readonly about: string }>> = {
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
};

/** In tiles, for a choice that has not been played on. */
const SMALL_TILES = 0.05;
const COSTLY_TILES = 0.8;

/** The engine's own verdict where there is one, from the loss in tiles until then. */
export function verdictOf({ loss, analysis }: Pick<ChoiceReview, 'loss' | 'analysis'>): Verdict {
  return analysis.depth === 'quick' ? verdictByTiles(loss) : analysis.verdict;
}

function verdictByTiles(loss: number): Verdict {
  if (loss === 0) return 'best';
  if (loss < SMALL_TILES) return 'just-as-good';
  return loss < COSTLY_TILES ? 'a-little-worse' : 'costly';
}
