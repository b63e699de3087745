// What a coach says before a choice, in steps, each of them computed: what stands out, where it leads, what serves it.
import type { CompiledCard } from '../../card/index.ts';
import type { Kernel } from '../../kernels/index.ts';
import {
  type AnswerChoice,
  type Bag,
  DIRECTIONS,
  FACES,
  type Face,
  faceIndex,
  facesOf,
  JOKER_INDEX,
  neighbor,
  numbered,
  type PendingDecision,
  SEATS,
  type SeatRecord,
  SUITS,
  simplestAnswer,
  sizeOf,
} from '../../rules/index.ts';
import { finalRack, recordWithAnswer } from '../belief/situation.ts';
import type { DeepAnalysis, Finalist } from '../review/analysis.ts';
import { groupsOf } from '../review/groups.ts';
import { reviewRound } from '../review/review-round.ts';
import { numberPhrase } from '../review/sentences/instead.ts';
import { capitalized, listed, playerAt } from '../review/sentences/phrases.ts';
import { groupName, tileList, tileName } from '../review/sentences/tiles.ts';
import { likeliestHands, type NearestWay, wants } from './likeliest-hands.ts';
import type { Reach } from './reach.ts';

/** Sentences of the first three steps; the fourth is the pass itself, which only an analysis can name. */
export interface Coaching {
  readonly standsOut: readonly string[];
  readonly pointsTo: readonly string[];
  readonly serves: readonly string[];
}

/** What a seat knew when a choice was offered, and how often its rack reaches each pattern of its card. */
export interface CoachedRack {
  readonly record: SeatRecord;
  readonly card: CompiledCard;
  /** By pattern; the same that puts the card in order. */
  readonly reach: readonly Reach[];
}

/** Of the choice that is open when the last step of the record is over; uses nothing that the seat cannot know. */
export function coachingFor({ record, card, reach }: CoachedRack): Coaching {
  const rack = finalRack(record);
  const likeliest = likeliestHands(card, rack, reach);
  return {
    standsOut: [...shapeSentences(rack, record.seat === record.dealer), ...gotSentences(record)],
    pointsTo: sectionSentences(likeliest, card),
    serves: servingSentences(likeliest, rack),
  };
}

/** What the coach does once a choice has been judged: it names one, or has another judged first. */
export interface CoachStep {
  readonly kind: 'name' | 'judge';
  readonly choice: Finalist;
}

/** So many choices are judged at most before one is named. */
const MOST_JUDGED = 4;

/**
 * A choice is named once it has been judged and nothing was better, and once it came out as one to compare another choice
 * with: whoever then chooses otherwise finds it in the review. `judged` are the analyses so far, one at least.
 */
export function nextCoachStep(judged: readonly DeepAnalysis[]): CoachStep {
  const good = judged.filter((analysis) => !isBehind(analysis)).map(ownOf);
  const compared = good.find((choice) => isCompared(choice, judged));
  if (compared !== undefined) return { kind: 'name', choice: compared };
  const latest = judged.at(-1)!;
  const other = alternativeTo(latest);
  if (other !== null && judged.length < MOST_JUDGED) return { kind: 'judge', choice: other };
  return { kind: 'name', choice: good[0] ?? other ?? ownOf(latest) };
}

function ownOf({ finalists, played }: DeepAnalysis): Finalist {
  return finalists[played]!;
}

function alternativeTo({ finalists, bestAlternative }: DeepAnalysis): Finalist | null {
  return bestAlternative === null ? null : finalists[bestAlternative]!;
}

function isBehind({ verdict }: DeepAnalysis): boolean {
  return verdict === 'costly' || verdict === 'a-little-worse';
}

/** Every number is compared with the others; a pass only where the search picked it, not where it is there as the one made. */
function isCompared({ tiles, number }: Finalist, judged: readonly DeepAnalysis[]): boolean {
  if (number !== null) return true;
  return judged.some(({ finalists, played }) =>
    finalists.some((one, place) => place !== played && one.tiles.join() === tiles.join()),
  );
}

/** The answer that a first look likes best, for an analysis to start from; nothing of it is passed blind. */
export function firstLook(record: SeatRecord, decision: PendingDecision, kernel: Kernel): AnswerChoice {
  const any = simplestAnswer(decision, facesOf(finalRack(record)));
  const looked = reviewRound(recordWithAnswer(record, any, 'player'), kernel).choices.at(-1);
  if (looked === undefined) return any;
  return looked.kind === 'pass'
    ? answerOf(decision, { tiles: looked.best.tiles, number: null })
    : answerOf(decision, { tiles: [], number: looked.best });
}

/** What was compared, as an answer to the open step. */
export function answerOf(
  decision: PendingDecision,
  { tiles, number }: Pick<Finalist, 'tiles' | 'number'>,
): AnswerChoice {
  switch (decision.kind) {
    case 'pass':
      return { kind: 'pass', step: decision.step, tiles, blind: 0 };
    case 'vote':
      return { ...decision, go: number === 1 };
    case 'ask':
      return { ...decision, count: number ?? 0 };
  }
}

/** The fourth step: what to choose and how it fares, and of a pass how few of the nearest hands would miss its tiles. */
export function coachedSentences(
  { kind }: PendingDecision,
  rack: CoachedRack,
  choice: Finalist,
): readonly string[] {
  const wins = `From there, against fairly strong players, you would win about ${Math.round(choice.winProbability.value)} in 100 games.`;
  // Who reads both wonders otherwise which of the two numbers is right.
  const beside = 'The line of wins in your review is about club players, so it usually lies higher.';
  const said =
    kind === 'pass'
      ? passSentences(rack, choice.tiles)
      : [`We would ${numberPhrase(kind, choice.number ?? 0)}.`];
  return [...said, wins, beside];
}

/** Beside the numbers of tiles, figures would be taken for more of those. */
const IN_WORDS = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function passSentences({ record, card, reach }: CoachedRack, tiles: readonly Face[]): readonly string[] {
  const rack = finalRack(record);
  const likeliest = likeliestHands(card, rack, reach);
  const uses = (face: Face) => likeliest.filter(({ hand }) => wants(hand, faceIndex(face))).length;
  const passed = [...new Set(tiles)];
  const places = passed.map((face, place) => {
    const count = uses(face);
    const verb = place > 0 ? '' : count > 1 ? ' have a place' : ' has a place';
    return `${IN_WORDS[count] ?? count}${verb} for ${tileName(face)}`;
  });
  const kept = facesOf(rack).filter((face) => face !== 'joker' && !tiles.includes(face));
  const isByCount = Math.max(...passed.map(uses)) <= Math.min(...kept.map(uses));
  return [
    `We would pass ${tileList(tiles)}.`,
    `Of those ${likeliest.length} hands, ${listed(places)}.`,
    ...(isByCount
      ? []
      : ['By those counts alone we would pass other tiles; played on, this pass does better.']),
  ];
}

/** From so many tiles of a suit, of a row or of a number on they are worth a word. */
const MANY = { suit: 6, row: 4, number: 3 } as const;

function shapeSentences(rack: Bag, isDealer: boolean): readonly string[] {
  const groups = groupsOf(rack);
  const jokers = rack[JOKER_INDEX]!;
  const size = sizeOf(rack);
  const said = [
    ...(groups.length > 0 ? [`You hold ${listed(groups.map((group) => `a ${groupName(group)}`))}.`] : []),
    ...(jokers > 0 ? [`You have ${jokers === 1 ? 'a joker' : `${jokers} jokers`}.`] : []),
    ...SUITS.flatMap((suit) => {
      const count = facesOf(rack).filter((face) => numbered(face)?.suit === suit).length;
      return count >= MANY.suit ? [`${count} of your ${size} tiles are ${suit}.`] : [];
    }),
    ...SUITS.flatMap((suit) => rowSentence(rack, suit)),
    ...likeNumberSentence(rack),
  ];
  const open = said.length > 0 ? said : ['Nothing stands out: no pair, no joker and no long row.'];
  return isDealer ? [...open, 'As East you hold one tile more than the others.'] : open;
}

function rowSentence(rack: Bag, suit: (typeof SUITS)[number]): readonly string[] {
  const start = faceIndex(`${suit}-1`);
  let longest: number[] = [];
  let row: number[] = [];
  for (let number = 1; number <= 9; number++) {
    row = rack[start + number - 1]! > 0 ? [...row, number] : [];
    if (row.length > longest.length) longest = row;
  }
  return longest.length >= MANY.row ? [`${listed(longest.map(String))} ${suit} are in a row.`] : [];
}

/** The number of which most tiles are held, in two suits at least. */
function likeNumberSentence(rack: Bag): readonly string[] {
  const counts = Array.from({ length: 9 }, (_, at) => {
    const held = SUITS.map((_, suit) => rack[suit * 9 + at]!);
    return { number: at + 1, tiles: held.reduce((a, b) => a + b, 0), suits: held.filter(Boolean).length };
  });
  const most = counts.filter(({ suits }) => suits > 1).sort((a, b) => b.tiles - a.tiles)[0];
  return most && most.tiles >= MANY.number
    ? [`You hold ${most.tiles} tiles of number ${most.number}, across suits.`]
    : [];
}

/** What each neighbor has given so far, and which suits were not among it. */
function gotSentences({ seat, steps }: SeatRecord): readonly string[] {
  const came = SEATS.map((): Face[] => []);
  for (const step of steps) if (step.kind === 'move') came[step.from]!.push(...step.received);
  return DIRECTIONS.flatMap((toward) => {
    const tiles = came[neighbor(seat, toward)]!;
    if (tiles.length < 3) return [];
    const none = SUITS.filter((suit) => tiles.every((face) => numbered(face)?.suit !== suit));
    const absent = none.length === 0 ? '' : ` ${capitalized(listed(none.map((suit) => `no ${suit}`)))}.`;
    return [`From ${playerAt(toward)} came ${tileList(tiles)}.${absent}`];
  });
}

function sectionSentences(likeliest: readonly NearestWay[], card: CompiledCard): readonly string[] {
  const [first] = likeliest;
  if (first === undefined) return ['This card has no hands.'];
  const counts = card.sections
    .map(({ name }, index) => ({
      name,
      count: likeliest.filter(({ hand }) => card.patterns[hand.pattern]!.section === index).length,
    }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  const others = counts.slice(3).reduce((sum, { count }) => sum + count, 0);
  const shown = counts
    .slice(0, 3)
    .map(({ name, count }, place) => `${count}${place > 0 ? '' : count === 1 ? ' is' : ' are'} in ${name}`);
  const concealed = likeliest.filter(({ hand }) => card.patterns[hand.pattern]!.concealed).length;
  return [
    `Of the ${likeliest.length} hands you are likeliest to reach, ${listed([...shown, ...(others > 0 ? [`${others} elsewhere`] : [])])}.`,
    `The likeliest is ${away(first.toGo)}; ${hardness(first)}`,
    ...(concealed > 0
      ? [`${concealed} of the ${likeliest.length} hands must stay concealed, which is harder.`]
      : []),
  ];
}

function away(toGo: number): string {
  return toGo === 1 ? '1 tile away' : `${toGo} tiles away`;
}

function hardness({ toGo, naturals }: NearestWay): string {
  if (toGo === 0) return 'you hold it.';
  if (naturals === 0) return 'jokers may stand for all that is missing.';
  if (naturals >= toGo) return 'no joker may stand for what is missing.';
  return `for ${naturals} of those no joker may stand.`;
}

/** Tiles that at most so many of the ten hands have a place for. */
const FEW = 2;

function servingSentences(likeliest: readonly NearestWay[], rack: Bag): readonly string[] {
  const held = FACES.flatMap((face, index) =>
    rack[index]! > 0 && index !== JOKER_INDEX
      ? [{ face, uses: likeliest.filter(({ hand }) => wants(hand, index)).length }]
      : [],
  ).sort((a, b) => a.uses - b.uses);
  const all = likeliest.length;
  const unused = held.filter(({ uses }) => uses === 0).map(({ face }) => tileName(face));
  const few = held.filter(({ uses }) => uses > 0 && uses <= FEW).map(({ face }) => tileName(face));
  const most = held.at(-1);
  return [
    ...(unused.length > 0 ? [`None of those ${all} hands has a place for ${orList(unused)}.`] : []),
    ...(few.length > 0 ? [`Only one or two have a place for ${orList(few)}.`] : []),
    ...(most && most.uses > FEW ? [mostServingSentence(most, all)] : []),
  ];
}

function mostServingSentence({ face, uses }: { readonly face: Face; readonly uses: number }, all: number) {
  const name = capitalized(tileName(face));
  if (uses === all) return `${name} serves all of them.`;
  return `${name} serves ${2 * uses > all ? `most of them: ${uses} of ${all}` : `${uses} of ${all}`}.`;
}

function orList(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}
