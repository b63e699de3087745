// The one thing worth learning from a deal, or what was done well.
import type { DeepAnalysis } from '../analysis.ts';
import { choicesMeant, costliestChoice, hadBetter } from '../choice-verdict.ts';
import type { ChoiceReview, PassReview, Review } from '../review.ts';
import { alternativePhrase } from './deep-analysis.ts';
import { optionPhrase } from './number.ts';
import { reasonFor, swapPhrase } from './pass.ts';
import { closerBy, listed, moreWins, STEP_PHRASES, VOICES } from './phrases.ts';
import { groupName, tileList } from './tiles.ts';

const NOTHING_CLEAR = 'No choice of this deal was clearly worse than another that we tried.';
const NOT_YET =
  'Nothing that we have played on so far was clearly worse. We have not played on every choice yet.';

/** About the player's own choices; where the player made none, about those made for the seat. */
export function lessonOf({ choices }: Pick<Review, 'choices'>): string {
  const meant = choicesMeant(choices);
  const costliest = costliestChoice(choices);
  if (costliest === null) return 'There was no choice to look back on yet.';
  const { analysis } = costliest;
  if (analysis.depth === 'quick') {
    return hadBetter(costliest) ? firstLesson(costliest) : praise(meant, 'At first look, ');
  }
  const whole = meant.every((choice) => choice.analysis.depth === 'deep');
  if (hadBetter(costliest)) return deepLesson(costliest, analysis, whole ? '' : 'So far, ');
  if (!whole) return NOT_YET;
  const unsure = meant.some((choice) => choice.analysis.verdict === 'cant-say');
  return unsure ? NOTHING_CLEAR : praise(meant, 'Well played: ');
}

function firstLesson(choice: ChoiceReview): string {
  const better =
    choice.kind === 'pass' ? `${swapPhrase(choice)}, ${reasonFor(choice)}` : optionPhrase(choice);
  return `${opening(choice, 'At first look, ')} Better: ${better}, ${closerBy(choice.loss)}.`;
}

function deepLesson(
  choice: ChoiceReview,
  { finalists, bestAlternative, loss }: DeepAnalysis,
  start: string,
): string {
  const better = alternativePhrase(finalists[bestAlternative!]!, choice.kind);
  return `${opening(choice, start)} Better: ${better}, for ${moreWins(loss!.value)}.`;
}

function opening(choice: ChoiceReview, start: string): string {
  const step = STEP_PHRASES[choice.step];
  const what = choice.kind === 'blind' ? `how many to pass blind in ${step}` : step;
  const who = choice.by === 'player' ? '' : `, where ${VOICES[choice.by].subject} chose`;
  return `${start}${start === '' ? 'The' : 'the'} one thing to take from this deal is ${what}${who}.`;
}

function praise(choices: readonly ChoiceReview[], start: string): string {
  const { subject } = VOICES[choices[0]!.by];
  const each = subject === 'you' ? 'each of your choices' : `each choice that ${subject} made`;
  const finest = choices
    .filter((choice): choice is PassReview => choice.kind === 'pass')
    .reduce<PassReview | null>((most, pass) => (most && merit(pass) <= merit(most) ? most : pass), null);
  return `${start}${each} was as good as the best we found, or very nearly.${finest ? example(finest) : ''}`;
}

/** How much there was to keep and how well it was kept. */
function merit({ parts, loss }: PassReview): number {
  return parts.groupsKept - parts.broken.length - loss;
}

function example(pass: PassReview): string {
  const { groups, broken } = pass.parts;
  const whole = groups.filter(({ face }) => !broken.some((other) => other.face === face));
  const gave = `${VOICES[pass.by].subject} gave ${tileList(pass.played.tiles)}`;
  const kept =
    whole.length > 0 ? ` and kept ${listed(whole.map((group) => `the ${groupName(group)}`))} whole` : '';
  return ` In ${STEP_PHRASES[pass.step]} ${gave}${kept}.`;
}
