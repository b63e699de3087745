// What a choice does to the others, in words.
import { MOVES } from '../../../rules/index.ts';
import type { DeepAnalysis } from '../analysis.ts';
import {
  choiceVerdict,
  feedsNeighbor,
  feedsNeighborPartly,
  hadBetter,
  helpsMore,
  namedAlternative,
} from '../choice-verdict.ts';
import { without } from '../groups.ts';
import type { ChoiceReview, NumberReview, PassReview } from '../review.ts';
import { namedNumber } from './instead.ts';
import { capitalized, playerAt, VOICES, winsOf } from './phrases.ts';
import { theTile } from './tiles.ts';

/** The vote that was not chosen, as the subject of a sentence. */
export function otherVote(choice: NumberReview): string {
  return namedNumber(choice) === 1 ? 'Continuing' : 'Stopping';
}

/** What a vote does to the other three, only where that is beyond doubt. */
function othersSentence(choice: NumberReview, { others }: DeepAnalysis): readonly string[] {
  if (choice.kind !== 'vote' || others === null || Math.abs(others.value) <= others.halfWidth) return [];
  const wins = winsOf(Math.abs(others.value));
  const does = others.value > 0 ? 'would give' : 'would cost';
  return [`${otherVote(choice)} ${does} the other three about ${wins} in 100 games between them.`];
}

/**
 * What the better vote does to the others, where it speaks for it: beyond doubt, or at least that who stops denies them
 * three more passes.
 */
export function othersReason(choice: NumberReview): readonly string[] {
  const { analysis } = choice;
  if (choice.kind !== 'vote' || analysis.depth === 'quick' || !isReason(choice)) return [];
  const sure = othersSentence(choice, analysis);
  return sure.length > 0 || namedNumber(choice) === 1
    ? sure
    : ['Stopping keeps the other three from a second Charleston too.'];
}

/** The same where it is no reason; beside praise nothing is said that speaks for the other vote. */
export function othersBeside(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  if (choice.kind === 'pass' || isReason(choice)) return [];
  const verdict = choiceVerdict(choice);
  const isPraised = verdict === 'best' || verdict === 'just-as-good';
  return isPraised && (analysis.others?.value ?? 0) < 0 ? [] : othersSentence(choice, analysis);
}

function isReason(choice: NumberReview): boolean {
  const { analysis } = choice;
  if (analysis.depth === 'quick' || analysis.why === null || analysis.others === null) return false;
  return hadBetter(choice) && analysis.others.value < 0;
}

/** Where most of a loss goes through the receiver: with the tile that helps there, if one alone is exchanged. */
export function neighborReason(pass: PassReview): readonly string[] {
  const { analysis } = pass;
  if (analysis.depth === 'quick' || !hadBetter(pass) || !feedsNeighbor(analysis)) return [];
  return [`Most of what is lost probably ${goesTo(pass)}.`];
}

/** Where nothing else stands out, a part of it is worth a word too. */
export function partToNeighbor(pass: PassReview): readonly string[] {
  const { analysis } = pass;
  if (analysis.depth === 'quick' || !feedsNeighborPartly(analysis)) return [];
  return [`Part of what is lost probably ${goesTo(pass)}.`];
}

function goesTo(pass: PassReview): string {
  const { played, step } = pass;
  const named = namedAlternative(pass)?.tiles ?? played.tiles;
  const [given, ...more] = without(played.tiles, named);
  const [instead] = without(named, played.tiles);
  const tile =
    given === undefined || instead === undefined || more.length > 0
      ? ''
      : `: ${theTile(given)} helps there more than ${theTile(instead)}`;
  return `goes to ${playerAt(MOVES[step].toward)}${tile}`;
}

/**
 * Only where what the neighbor's gain or loss cost is beyond doubt over the racks it could have had: of the one it has we
 * know nothing. It does not praise where something is better; beside a rule of thumb that warns of such a pass it says so.
 */
export function helpSentence(
  choice: ChoiceReview,
  analysis: DeepAnalysis,
  isWarnedOf = false,
): readonly string[] {
  const { giveaway } = analysis;
  if (choice.kind !== 'pass' || giveaway === null) return [];
  const isMore = helpsMore(analysis);
  const isLess = giveaway.value < -giveaway.halfWidth && !hadBetter(choice);
  if (!isMore && !isLess) return [];
  const amount = Math.abs(giveaway.value) < 0.3 ? 'a little ' : '';
  const { owner } = VOICES[choice.by];
  const pass = isWarnedOf && isLess ? `Here, though, ${owner} pass` : `${capitalized(owner)} pass`;
  return [
    `${pass} probably helps ${playerAt(MOVES[choice.step].toward)} ${amount}${isMore ? 'more' : 'less'} than most passes do.`,
  ];
}
