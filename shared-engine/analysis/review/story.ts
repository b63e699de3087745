// One state, one story: all that is told of a review, as a function of its choices alone.
import { choiceVerdict, costliestChoice, hadBetter } from './choice-verdict.ts';
import type { ChoiceReview, ChoiceStory, Review, Story } from './review.ts';
import { deepVerdict, helpSentence } from './sentences/deep-verdict.ts';
import { headlineOf } from './sentences/headline.ts';
import { firstNumberAnswer, numberFacts } from './sentences/number.ts';
import { firstPassAnswer, passFacts, passReasons } from './sentences/pass.ts';

type SectionNames = Review['sections'];

export function storyOf({ choices, sections }: Pick<Review, 'choices' | 'sections'>): Story {
  const costliest = costliestChoice(choices);
  return {
    headline: headlineOf(choices),
    opened: costliest === null ? 0 : choices.indexOf(costliest),
    choices: choices.map((choice) => choiceStoryOf(choice, sections)),
  };
}

/** Where something better is told, only what speaks for it is told of a pass, not what the pass did well. */
function choiceStoryOf(choice: ChoiceReview, sections: SectionNames): ChoiceStory {
  const { analysis } = choice;
  const facts =
    choice.kind !== 'pass' ? numberFacts(choice) : passFacts(choice, hadBetter(choice) ? null : sections);
  const reasons = choice.kind === 'pass' && hadBetter(choice) ? passReasons(choice) : [];
  const verdict = choiceVerdict(choice);
  if (analysis.depth === 'quick') {
    const first = choice.kind === 'pass' ? firstPassAnswer(choice) : firstNumberAnswer(choice);
    return { verdict, sentences: [...first, ...reasons, ...facts], rows: [] };
  }
  const help = helpSentence(choice, analysis);
  const sentences = [...deepVerdict(choice, analysis), ...reasons, ...help, ...facts];
  return { verdict, sentences, rows: rowsOf(analysis) };
}

function rowsOf({
  finalists,
  bestAlternative,
}: Extract<ChoiceReview['analysis'], { depth: 'deep' }>): readonly number[] {
  const inOrder = [...finalists.keys()];
  if (bestAlternative === null) return inOrder;
  return [bestAlternative, ...inOrder.filter((place) => place !== bestAlternative)];
}
