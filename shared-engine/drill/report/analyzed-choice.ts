// What a deep analysis says of one choice, as much of it as a class is told: little enough to be stored with the class.
import {
  bestSentence,
  type ChoiceReview,
  choiceVerdict,
  type DeepAnalysis,
  hadBetter,
  type MeasuredValue,
  MISTAKE_CATEGORY_NAMES,
  type MistakeCategory,
  mistakesOf,
  type Review,
  sectionsLeft,
  type Verdict,
} from '../../analysis/index.ts';
import { type Face, sortFaces } from '../../rules/index.ts';

/** Everything in it follows from what the seat knew, what it chose and the card. */
export interface AnalyzedChoice {
  readonly kind: ChoiceReview['kind'];
  readonly step: ChoiceReview['step'];
  readonly verdict: Verdict;
  /** In wins of 100 games; null where nothing else could have been chosen. */
  readonly loss: MeasuredValue | null;
  /** The best that was found: the choice itself where nothing came out clearly better. */
  readonly best: FoundBest;
  /** Of the kinds of mistake, without what the player said to aim for. */
  readonly mistakes: readonly MistakeCategory[];
  /** Sections that the choice put out of reach and the better one would not have. */
  readonly sectionsLeft: readonly string[];
}

export interface FoundBest {
  /** Tiles in rack order, or a number. */
  readonly chosen: readonly Face[] | number;
  /** Wins in 100 games with it. */
  readonly wins: number;
  /** Why, in one sentence. */
  readonly why: string;
}

/** Null until the choice is deeply analyzed. */
export function analyzedChoice(choice: ChoiceReview, sections: Review['sections']): AnalyzedChoice | null {
  const { kind, step, analysis } = choice;
  if (analysis.depth !== 'deep') return null;
  return {
    kind,
    step,
    verdict: choiceVerdict(choice),
    loss: analysis.loss,
    best: bestOf(choice, analysis, sections),
    mistakes: mistakesOf(choice),
    sectionsLeft: sectionsLeft(choice),
  };
}

/** Those of a review that are deeply analyzed. */
export function analyzedChoices({ choices, sections }: Review): readonly AnalyzedChoice[] {
  return choices.flatMap((choice) => analyzedChoice(choice, sections) ?? []);
}

function bestOf(choice: ChoiceReview, analysis: DeepAnalysis, sections: Review['sections']): FoundBest {
  const { finalists, played, bestAlternative } = analysis;
  const found = finalists[hadBetter(choice) && bestAlternative !== null ? bestAlternative : played];
  const own = choice.kind === 'pass' ? choice.played.tiles : choice.played;
  const chosen = found === undefined ? own : choice.kind === 'pass' ? found.tiles : (found.number ?? own);
  return {
    chosen: typeof chosen === 'number' ? chosen : sortFaces(chosen),
    wins: found?.winProbability.value ?? 0,
    why: bestSentence(choice, sections),
  };
}

/** With what the player said to aim for before the choice. */
export function mistakesWithAims(
  { mistakes, sectionsLeft: left }: AnalyzedChoice,
  aims: readonly string[],
): readonly MistakeCategory[] {
  if (mistakes.length === 0 || !aims.some((aim) => left.includes(aim))) return mistakes;
  const all: readonly MistakeCategory[] = ['aim-left', ...mistakes.filter((one) => one !== 'poorer-fit')];
  return MISTAKE_CATEGORY_NAMES.filter((category) => all.includes(category));
}
