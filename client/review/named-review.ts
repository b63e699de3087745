// A review as the page tells it: the players around this one by name, where the page knows who sat there.
import { type NeighborNames, type Review, withNames } from '../../shared-engine/index.ts';

/** The same review; only its sentences differ. */
export function namedReview(review: Review, names: NeighborNames): Review {
  const told = (sentences: readonly string[]) => sentences.map((sentence) => withNames(sentence, names));
  const { headline, choices, ledger } = review.story;
  return {
    ...review,
    story: {
      ...review.story,
      headline: told(headline),
      choices: choices.map((choice) => ({ ...choice, sentences: told(choice.sentences) })),
      ledger: told(ledger),
    },
  };
}
