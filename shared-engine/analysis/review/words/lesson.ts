// The one thing worth learning from a round, or what was done well.
import { BASIS } from '../basis.ts';
import type { DeepJudgement, Measured } from '../judgement.ts';
import type { ChoiceReview, NumberReview, PassReview, Review } from '../review.ts';
import { inTenths } from '../rounding.ts';
import { pointsOf, rivalPhrase } from './judgement.ts';
import { option } from './number.ts';
import { becauseOf } from './pass.ts';
import { familiesLeft, listed, STEP_NAMES, tilesOf, VOICES } from './phrases.ts';
import { groupName, tileList } from './tiles.ts';

/** Speaks of the owner's own choices; where the owner made none, of those made for the seat. */
export function lessonOf({ choices }: Pick<Review, 'choices'>): string {
  const own = choices.filter(({ by }) => by === 'owner');
  const judged = own.length > 0 ? own : choices;
  const deep = deepLesson(judged);
  if (deep !== null) return deep;
  const costliest = judged.reduce<ChoiceReview | null>(
    (worst, choice) => (worst === null || choice.loss > worst.loss ? choice : worst),
    null,
  );
  if (costliest === null) return 'There was no choice to look back on yet.';
  if (costliest.loss < BASIS.smallLoss) return praise(judged);
  const gain = `${tilesOf(inTenths(costliest.loss))} nearer on average`;
  const start = `The one thing to take from this round is ${placeOf(costliest)}`;
  return costliest.kind === 'pass'
    ? `${start}: ${passLesson(costliest)} ${gain}.`
    : `${start}: best under these assumptions was to ${option(costliest)}, ${gain}.`;
}

/** Once every choice has been played on in many worlds, only what is clearly worse is spoken of. */
function deepLesson(judged: readonly ChoiceReview[]): string | null {
  if (judged.length === 0) return null;
  let worst: {
    readonly choice: ChoiceReview;
    readonly judgement: DeepJudgement;
    readonly loss: Measured;
  } | null = null;
  for (const choice of judged) {
    const { judgement } = choice;
    if (judgement.depth === 'quick') return null;
    const { loss, verdict } = judgement;
    if (verdict !== 'better-exists' || loss === null) continue;
    if (worst === null || loss.value > worst.loss.value) worst = { choice, judgement, loss };
  }
  if (worst === null) return praise(judged);
  const { choice, judgement, loss } = worst;
  const rival = rivalPhrase(judgement.finalists[judgement.rival!]!, choice.kind);
  return `The one thing to take from this round is ${placeOf(choice)}: ${rival} instead would have added ${pointsOf(loss)}.`;
}

function placeOf(choice: ChoiceReview): string {
  const step = STEP_NAMES[choice.step];
  const place = choice.kind === 'blind' ? `how many tiles to pass on unseen in ${step}` : step;
  return choice.by === 'owner' ? place : `${place}, where ${VOICES[choice.by].subject} chose`;
}

function passLesson(choice: PassReview): string {
  const { betterToKeep, betterToGive } = choice.parts;
  return `best under these assumptions was to keep ${tileList(betterToKeep)} and give ${tileList(betterToGive)} instead, ${becauseOf(choice)},`;
}

function praise(choices: readonly (PassReview | NumberReview)[]): string {
  const { subject } = VOICES[choices[0]!.by];
  const opening =
    subject === 'you'
      ? 'Well played: each of your choices was as good as the best we found, or very nearly'
      : 'A well played exchange: each choice was as good as the best we found, or very nearly';
  const passes = choices.filter((choice): choice is PassReview => choice.kind === 'pass');
  const finest = passes.reduce<PassReview | null>(
    (most, pass) => (most === null || merit(pass) > merit(most) ? pass : most),
    null,
  );
  return finest === null ? `${opening}.` : `${opening}. ${concrete(finest)}`;
}

/** How much there was to keep and how well it was kept. */
function merit({ parts, loss }: PassReview): number {
  return parts.groupsKept - parts.broken.length - loss;
}

function concrete(pass: PassReview): string {
  const { groups, broken, familyCount, familiesKept } = pass.parts;
  const whole = groups.filter(({ face }) => !broken.some((other) => other.face === face));
  const kept =
    whole.length > 0 ? `kept ${listed(whole.map((group) => `the ${groupName(group)}`))} whole and ` : '';
  return `In ${STEP_NAMES[pass.step]} ${VOICES[pass.by].subject} gave ${tileList(pass.played.tiles)}, ${kept}${familiesLeft(familiesKept, familyCount)}.`;
}
