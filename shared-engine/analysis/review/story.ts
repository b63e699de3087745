// One state, one story: all that is told of a review, as a function of its choices and its ledger alone.
import type { DeepAnalysis } from './analysis.ts';
import { cameBack } from './came-back.ts';
import { choicesMeant, choiceVerdict, costliestChoice, hadBetter } from './choice-verdict.ts';
import { fedNeighbor } from './fed-neighbor.ts';
import { mistakesOf } from './mistakes.ts';
import type { ChoiceReview, ChoiceStory, Review, Story } from './review.ts';
import { anotherSentence, deepVerdict, playedOnSentence } from './sentences/deep-verdict.ts';
import { headlineOf, plainestReason } from './sentences/headline.ts';
import { ledgerSentences, type ToldBeside, wholeRoundSentences } from './sentences/ledger.ts';
import { helpSentence, othersBeside } from './sentences/neighbors.ts';
import {
  chosenSentence,
  effectSentence,
  firstNumberAnswer,
  numberFacts,
  numberWhy,
} from './sentences/number.ts';
import {
  firstPassAnswer,
  isWarnedOf,
  passedSentence,
  passFacts,
  passReasons,
  returnedSentence,
} from './sentences/pass.ts';
import { shownWins } from './sentences/phrases.ts';
import { robustnessSentences } from './sentences/robustness.ts';

type SectionNames = Review['sections'];

export function storyOf({
  choices,
  sections,
  ledger,
  firstDiscard,
  toGoStart,
  toGoEnd,
}: Pick<Review, 'choices' | 'sections' | 'ledger' | 'firstDiscard' | 'toGoStart' | 'toGoEnd'>): Story {
  const costliest = costliestChoice(choices);
  const fed = fedNeighbor(choices);
  return {
    headline: headlineOf(choices, sections),
    opened: costliest === null ? 0 : choices.indexOf(costliest),
    choices: choices.map((choice) => choiceStoryOf(choice, sections)),
    fed,
    ledger:
      ledger === null
        ? []
        : [
            ...ledgerSentences(ledger, { ...lossesTold(choices), toGoStart, toGoEnd }),
            ...wholeRoundSentences(ledger, { fed, back: cameBack(choices), firstDiscard }),
          ],
  };
}

/** In wins: what the choices that the ledger counts lost, as a reader meets it, and what those that are unsure may have lost. */
function lossesTold(choices: readonly ChoiceReview[]): Pick<ToldBeside, 'losses' | 'unsure' | 'worse'> {
  const meant = choicesMeant(choices);
  const deepOf = ({ analysis }: ChoiceReview) => (analysis.depth === 'deep' ? [analysis] : []);
  return {
    worse: meant.filter(hadBetter).flatMap((choice) =>
      deepOf(choice).map((analysis) => ({
        kind: choice.kind,
        step: choice.step,
        told: toldWins(analysis),
      })),
    ),
    losses: meant.filter(hadBetter).flatMap(deepOf).map(toldWins),
    unsure: meant
      .filter((choice) => choiceVerdict(choice) === 'cant-say')
      .flatMap(deepOf)
      .map(({ atMost }) => atMost),
  };
}

function toldWins({ loss }: DeepAnalysis): number {
  return Number(shownWins(loss?.value ?? 0));
}

function choiceStoryOf(choice: ChoiceReview, sections: SectionNames): ChoiceStory {
  const { analysis } = choice;
  const verdict = choiceVerdict(choice);
  const mistakes = mistakesOf(choice);
  const did = choice.kind === 'pass' ? passedSentence(choice) : chosenSentence(choice);
  const effect = choice.kind === 'pass' ? [] : effectSentence(choice);
  const facts = factsOf(choice, sections);
  if (analysis.depth === 'quick') {
    const first = choice.kind === 'pass' ? firstPassAnswer(choice) : firstNumberAnswer(choice);
    return { verdict, sentences: [did, ...first, ...effect, ...facts], rows: [], mistakes };
  }
  const isWarned = choice.kind === 'pass' && isWarnedOf(choice);
  const help = [...othersBeside(choice, analysis), ...helpSentence(choice, analysis, isWarned)];
  const among = analysis.robustness === undefined ? [] : robustnessSentences(analysis.robustness);
  const played = [playedOnSentence(analysis), ...among];
  const found = deepVerdict(choice, analysis);
  const sentences = [
    did,
    ...found,
    ...effect,
    ...facts,
    ...anotherSentence(choice, analysis),
    ...help,
    ...played,
  ];
  return { verdict, sentences, rows: rowsOf(analysis), mistakes };
}

/**
 * Why the best that was found is the best, in one sentence of the story: what speaks for it where something else was
 * chosen, otherwise that nothing came out better. Empty until the choice has been played on.
 */
export function bestSentence(choice: ChoiceReview, sections: SectionNames): string {
  const { analysis } = choice;
  if (analysis.depth === 'quick') return '';
  const [verdict = '', ...more] = deepVerdict(choice, analysis);
  if (!hadBetter(choice)) return verdict;
  return plainestReason(choice, sections) ?? more[0] ?? verdict;
}

/** Where something better is told of a pass, only what speaks for it is told, not what the pass did well. */
function factsOf(choice: ChoiceReview, sections: SectionNames): readonly string[] {
  if (choice.kind !== 'pass') return [...numberWhy(choice, sections), ...numberFacts(choice)];
  const told = hadBetter(choice) ? passReasons(choice, sections) : passFacts(choice, sections);
  return [...told, ...returnedSentence(choice)];
}

function rowsOf({ finalists, bestAlternative }: DeepAnalysis): readonly number[] {
  const inOrder = [...finalists.keys()];
  if (bestAlternative === null) return inOrder;
  return [bestAlternative, ...inOrder.filter((place) => place !== bestAlternative)];
}
