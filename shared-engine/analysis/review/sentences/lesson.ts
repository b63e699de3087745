// The one thing worth learning from a deal, or what was done well.
import type { DeepAnalysis, MeasuredValue } from '../analysis.ts';
import { BASIS } from '../basis.ts';
import type { ChoiceReview, PassReview, Review } from '../review.ts';
import { alternativePhrase } from './deep-analysis.ts';
import { optionPhrase } from './number.ts';
import { reasonFor, swapPhrase } from './pass.ts';
import { closerBy, listed, moreWins, STEP_PHRASES, sectionsLeft, VOICES } from './phrases.ts';
import { groupName, tileList } from './tiles.ts';

/** About the player's own choices; where the player made none, about those made for the seat. */
export function lessonOf({ choices }: Pick<Review, 'choices'>): string {
  const own = choices.filter(({ by }) => by === 'player');
  const meant = own.length > 0 ? own : choices;
  const deep = deepLesson(meant);
  if (deep !== null) return deep;
  const costliest = meant.reduce<ChoiceReview | null>(
    (worst, choice) => (worst === null || choice.loss > worst.loss ? choice : worst),
    null,
  );
  if (costliest === null) return 'There was no choice to look back on yet.';
  if (costliest.loss < BASIS.smallLoss) return praise(meant);
  const better =
    costliest.kind === 'pass' ? `${swapPhrase(costliest)}, ${reasonFor(costliest)}` : optionPhrase(costliest);
  return `${opening(costliest)} Better: ${better}, ${closerBy(costliest.loss)}.`;
}

const NOTHING_CLEAR = 'No choice of this deal was clearly worse than another that we tried.';

/** Once every choice has been played on, only what is clearly worse is spoken of; null before. */
function deepLesson(choices: readonly ChoiceReview[]): string | null {
  if (choices.length === 0) return null;
  let worst: {
    readonly choice: ChoiceReview;
    readonly analysis: DeepAnalysis;
    readonly loss: MeasuredValue;
  } | null = null;
  let unsure = false;
  for (const choice of choices) {
    const { analysis } = choice;
    if (analysis.depth === 'quick') return null;
    const { loss, verdict } = analysis;
    if (verdict === 'cant-say') unsure = true;
    if ((verdict !== 'costly' && verdict !== 'a-little-worse') || loss === null) continue;
    if (worst === null || loss.value > worst.loss.value) worst = { choice, analysis, loss };
  }
  if (worst === null) return unsure ? NOTHING_CLEAR : praise(choices);
  const { choice, analysis, loss } = worst;
  const better = alternativePhrase(analysis.finalists[analysis.bestAlternative!]!, choice.kind);
  return `${opening(choice)} Better: ${better}, for ${moreWins(loss.value)}.`;
}

function opening(choice: ChoiceReview): string {
  const step = STEP_PHRASES[choice.step];
  const what = choice.kind === 'blind' ? `how many to pass blind in ${step}` : step;
  const who = choice.by === 'player' ? '' : `, where ${VOICES[choice.by].subject} chose`;
  return `The one thing to take from this deal is ${what}${who}.`;
}

function praise(choices: readonly ChoiceReview[]): string {
  const { subject } = VOICES[choices[0]!.by];
  const start =
    subject === 'you'
      ? 'Well played: each of your choices was as good as the best we found, or very nearly'
      : 'A well played exchange: each choice was as good as the best we found, or very nearly';
  const passes = choices.filter((choice): choice is PassReview => choice.kind === 'pass');
  const finest = passes.reduce<PassReview | null>(
    (most, pass) => (most === null || merit(pass) > merit(most) ? pass : most),
    null,
  );
  return finest === null ? `${start}.` : `${start}. ${example(finest)}`;
}

/** How much there was to keep and how well it was kept. */
function merit({ parts, loss }: PassReview): number {
  return parts.groupsKept - parts.broken.length - loss;
}

function example(pass: PassReview): string {
  const { groups, broken, sectionCount, sectionsKept } = pass.parts;
  const whole = groups.filter(({ face }) => !broken.some((other) => other.face === face));
  const kept =
    whole.length > 0 ? `kept ${listed(whole.map((group) => `the ${groupName(group)}`))} whole and ` : '';
  return `In ${STEP_PHRASES[pass.step]} ${VOICES[pass.by].subject} gave ${tileList(pass.played.tiles)}, ${kept}${sectionsLeft(sectionsKept, sectionCount)}.`;
}
