// The one thing worth learning from a deal, or what was done well.
import {
  choicesMeant,
  choiceVerdict,
  costliestChoice,
  hadBetter,
  isCostly,
  lossOf,
  madeNoDifference,
} from '../choice-verdict.ts';
import type { ChoiceReview, PassReview, Review } from '../review.ts';
import { betterWords, gainSentence } from './deep-verdict.ts';
import { insteadPhrase } from './instead.ts';
import { chosenPhrase, numberReasons } from './number.ts';
import { brokenRule, groupFacts, passedSentence, speaksFor } from './pass.ts';
import { capitalized, closerBy, listed, STEP_PHRASES, shownWins, VOICES, winsOf } from './phrases.ts';
import { sureAmong } from './robustness.ts';
import { groupName, tileList } from './tiles.ts';

/** About the player's own choices; where the player made none, about those made for the seat. */
export function headlineOf(
  choices: readonly ChoiceReview[],
  sections: Review['sections'],
): readonly string[] {
  const meant = choicesMeant(choices);
  const costliest = costliestChoice(choices);
  if (costliest === null) return ['There was no choice to look back on yet.'];
  const isFirst = costliest.analysis.depth === 'quick';
  const whole = meant.every(({ analysis }) => analysis.depth === 'deep');
  const unsure = meant.filter((choice) => choiceVerdict(choice) === 'cant-say');
  const start = isFirst ? 'At first look, ' : whole ? '' : 'So far, ';
  if (hadBetter(costliest)) {
    const told = [...lesson(costliest, start, sections, meant), ...passedOver(costliest, meant)];
    // Where nothing is costly, what is not known may matter more.
    return !whole || isCostly(costliest) || unsure.length === 0 ? told : [...told, unsureSentence(unsure)];
  }
  if (isFirst) return praise(meant, start);
  if (!whole) return soFar(meant);
  return unsure.length > 0
    ? ['We found nothing that was clearly better.', unsureSentence(unsure)]
    : praise(meant, 'Well played: ');
}

function unsureSentence([one, ...more]: readonly ChoiceReview[]): string {
  return one === undefined || more.length > 0
    ? `For ${more.length + 1} choices we can’t say whether another was better.`
    : `For one choice we can’t say whether another was better: ${choiceName(one)}.`;
}

export function choiceName({ kind, step }: Pick<ChoiceReview, 'kind' | 'step'>): string {
  return kind === 'blind' ? `the number to pass blind in ${STEP_PHRASES[step]}` : STEP_PHRASES[step];
}

/** A larger loss than the one that is spoken of, as a reader meets them, and why it is not that one. */
function passedOver(choice: ChoiceReview, meant: readonly ChoiceReview[]): readonly string[] {
  const told = (one: ChoiceReview): number => Number(shownWins(lossOf(one)));
  const [larger] = meant
    .filter((one) => one.analysis.depth === 'deep' && hadBetter(one) && told(one) > told(choice))
    .toSorted((a, b) => lossOf(b) - lossOf(a));
  if (larger === undefined) return [];
  const cost = madeNoDifference(larger) ? 'could have cost more' : 'probably cost more';
  const name = capitalized(choiceName(larger));
  return [`${name} ${cost}, about ${winsOf(lossOf(larger))}, but ${whyNot(larger, choice)}.`];
}

function whyNot(choice: ChoiceReview, spokenOf: ChoiceReview): string {
  if (madeNoDifference(choice) && !madeNoDifference(spokenOf)) return 'here it made no difference';
  const among = amongWhom(choice);
  return among !== null && isCostly(choice)
    ? `only among ${among} was something surely better`
    : 'that is less sure';
}

/** Null where something better is sure whoever the others are, as far as that is known. */
function amongWhom({ analysis }: ChoiceReview): string | null {
  return analysis.depth === 'deep' && analysis.robustness ? sureAmong(analysis.robustness) : null;
}

/** What is told of a choice at first look stands beside it until it has been played on. */
function soFar(choices: readonly ChoiceReview[]): readonly string[] {
  const isDoubted = choices.some((choice) => choice.analysis.depth === 'quick' && hadBetter(choice));
  return isDoubted
    ? [
        'So far, nothing that we have played on was clearly worse.',
        'We have not played on every choice yet, and another one still looks worse.',
      ]
    : ['So far, nothing was clearly worse.', 'We have not played on every choice yet.'];
}

function lesson(
  choice: ChoiceReview,
  start: string,
  sections: Review['sections'],
  meant: readonly ChoiceReview[],
): readonly string[] {
  // It says who chose as well.
  const did = choice.kind === 'pass' ? passedSentence(choice) : `${capitalized(chosenPhrase(choice))}.`;
  const { analysis, loss } = choice;
  const isDeep = analysis.depth === 'deep';
  const gain = isDeep ? gainSentence(analysis) : `That is ${closerBy(loss)}.`;
  const among = amongWhom(choice);
  const reason = plainestReason(choice, sections);
  return [
    `${capitalized(`${start}${aboutChoice(choice, meant)}`)}.`,
    did,
    `${isDeep ? betterWords(analysis) : 'Better'}: ${insteadPhrase(choice)}.`,
    gain,
    ...(among === null ? [] : [`This depends on the others: only among ${among} is it surely better.`]),
    ...(reason === undefined ? [] : [reason]),
    ...(choice.kind === 'pass' && isDeep ? brokenRule(choice, reason) : []),
  ];
}

/** How the choice there is most to learn from stands beside the others. */
function aboutChoice(choice: ChoiceReview, meant: readonly ChoiceReview[]): string {
  const what = choiceName(choice);
  const others = meant.filter((one) => one !== choice && hadBetter(one));
  if (madeNoDifference(choice)) {
    return others.length === 0
      ? `we found something better only for ${what}, and here it made no difference`
      : `we found something better only where it made no difference here, above all for ${what}`;
  }
  if (choice.analysis.depth !== 'deep' || isCostly(choice)) {
    return `the one thing to take from this deal is ${what}`;
  }
  return others.some(isCostly)
    ? `of what made a difference here, the surest gain was in ${what}`
    : `nothing was clearly costly; the surest gain was in ${what}`;
}

/** The first that is told for what is named. */
export function plainestReason(choice: ChoiceReview, sections: Review['sections']): string | undefined {
  const [reason] = choice.kind === 'pass' ? speaksFor(choice, sections) : numberReasons(choice, sections);
  return reason;
}

function praise(choices: readonly ChoiceReview[], start: string): readonly string[] {
  const { subject } = VOICES[choices[0]!.by];
  const each = subject === 'you' ? 'each of your choices' : `each choice that ${subject} made`;
  const finest = choices
    .filter((choice): choice is PassReview => choice.kind === 'pass')
    .reduce<PassReview | null>((most, pass) => (most && merit(pass) <= merit(most) ? most : pass), null);
  return [
    `${start}${each} was as good as the best we found, or very nearly.`,
    ...(finest === null ? [] : example(finest)),
  ];
}

/** How much there was to keep and how well it was kept. */
function merit({ parts, loss }: PassReview): number {
  return parts.groupsKept - parts.broken.length - loss;
}

/** Pairs and larger groups in one sentence. */
const MOST_NAMED = 3;

function example(pass: PassReview): readonly string[] {
  const { groups, broken } = pass.parts;
  const { subject } = VOICES[pass.by];
  const whole = groups.filter(({ face }) => !broken.some((other) => other.face === face));
  const more = pass.blind > 0 ? ` and ${pass.blind} more blind` : '';
  const gave = `For example, in ${STEP_PHRASES[pass.step]} ${subject} gave ${tileList(pass.played.tiles)}${more}.`;
  if (whole.length === 0) return [gave];
  // Three of four that are named would be taken for all of them.
  if (whole.length > MOST_NAMED && broken.length === 0) return [gave, ...groupFacts(pass)];
  const kept = whole.slice(0, MOST_NAMED).map((group) => `the ${groupName(group)}`);
  return [gave, `${capitalized(subject)} kept ${listed(kept)} together.`];
}
