// Deals drawn for a kind of mistake: those in which a typical player would make it, up to the choice where that happens.
import {
  type Analyst,
  analyzeDecision,
  choiceOfMistake,
  type MistakeCategory,
  mistakesOf,
  type Review,
  recordWithAnswer,
  reviewRound,
  SHALLOW_BUDGET,
} from '../analysis/index.ts';
import { type Chooser, chooseFor, finishRound } from '../bots/index.ts';
import type { Kernel } from '../kernels/index.ts';
import {
  type AnswerChoice,
  begin,
  openRound,
  type RandomDeal,
  SEATS,
  type Seat,
  type SeatRecord,
  type SeatView,
  STANDARD_TERMS,
  type Step,
  seatView,
  stepOf,
  stream,
} from '../rules/index.ts';
import { sureChance } from './named-habits.ts';
import { couldBe } from './possible-mistake.ts';
import { textHash } from './stored-round.ts';

/** Where whoever is asked sits. */
const SEAT: Seat = 0;
/** Choices played on, and deals, before a kind of mistake is taken to be too rare for this card. */
const MOST_LOOKS = 400;
const MOST_DEALS = 120;
/**
 * Choices of the player at each step, with other noise each time. The mistake must be among them six times as often as it
 * is usual in a choice for sure, and no less than in three of eight, or in two once half of the looks are used up; seven in
 * ten are enough.
 */
const CHOICES = 8;
const OF_USUAL = 6;
const LEAST = 0.375;
const LEAST_AT_LAST = 0.25;
/** Needs more sampled deals to be sure than a search has time for: whose hands the tiles given away went into. */
const TOO_SLOW: readonly MistakeCategory[] = [
  'pair-given',
  'like-numbers-given',
  'same-suit-given',
  'neighbor-fed',
];
const ENOUGH = 0.7;
/** Seed of the sampled deals for the second analysis; any number but the seed of the first would do. */
const SECOND_ANALYSIS_SEED = 0x2d8;

export interface DealWish {
  /** Null for a deal by chance. */
  readonly kind: MistakeCategory | null;
  /** The first pass alone, without an exchange before it. */
  readonly firstPass: boolean;
}

export interface DrawnDeal {
  /** As a typical player went on from there. */
  readonly record: SeatRecord;
  /** Where there is something to choose. */
  readonly step: Step;
  /** The kind of mistake that a typical player makes here; null for a deal by chance. */
  readonly kind: MistakeCategory | null;
}

export interface DealTools {
  readonly analyst: Analyst;
  readonly kernel: Kernel;
}

/**
 * Yields the number of deals looked at, one after the other; returns the first that tempts a typical player to the mistake
 * wished for, found twice. Where that is too rare, a deal by chance.
 */
export function* drawDeal(
  tools: DealTools,
  { kind, firstPass }: DealWish,
  seed: string,
): Generator<number, DrawnDeal> {
  const looks = { left: MOST_LOOKS };
  for (let nth = 1; kind && canBeDrawn(kind, firstPass) && looks.left > 0 && nth <= MOST_DEALS; nth++) {
    const { record, views } = playTypically(tools.kernel, `${seed} deal ${nth}`, firstPass);
    for (const [step, view] of views) {
      if (tempts(tools, { view, kind, name: `${seed} deal ${nth} ${step}` }, looks))
        return { record, step, kind };
    }
    yield nth;
  }
  const { record } = playTypically(tools.kernel, `${seed} by chance`, firstPass);
  const { choices } = reviewRound(record, tools.kernel);
  const { step } = choices[stream(seed, 'step').below(choices.length)]!;
  return { record, step, kind: null };
}

/** Nobody says an aim for a deal that is only drawn; before the first pass nothing has arrived, and nothing is late. */
export function canBeDrawn(kind: MistakeCategory, firstPass: boolean): boolean {
  if (kind === 'aim-left' || TOO_SLOW.includes(kind)) return false;
  if (!firstPass) return true;
  return choiceOfMistake(kind) === 'pass' && kind !== 'new-multiple' && kind !== 'committed-too-late';
}

interface Temptation {
  readonly view: SeatView;
  readonly kind: MistakeCategory;
  /** Of the noise of the player. */
  readonly name: string;
}

/** Whether a typical player makes the mistake here often enough, twice: with other noise and on other sampled deals. */
function tempts(tools: DealTools, wanted: Temptation, looks: { left: number }): boolean {
  const { view, kind } = wanted;
  const least = looks.left > MOST_LOOKS / 2 ? LEAST : LEAST_AT_LAST;
  const needed = Math.ceil(CHOICES * Math.min(ENOUGH, Math.max(least, OF_USUAL * sureChance(kind))));
  return [undefined, SECOND_ANALYSIS_SEED].every((seed, nth) => {
    const possible = possibleAnswers(tools.kernel, wanted, nth * CHOICES);
    if (times(possible) < needed) return false;
    const earlier = reviewRound(view.record, tools.kernel);
    const found = mistakesAmong(tools, { view, earlier, kind, seed, needed }, possible, looks);
    return times(found) >= needed;
  });
}

/** What a typical player chooses here that could be the mistake, most often first; the noise is counted from `from` on. */
function possibleAnswers(kernel: Kernel, { view, kind, name }: Temptation, from: number): Counted[] {
  const answers = new Map<string, { readonly answer: AnswerChoice; count: number }>();
  for (let time = from + 1; time <= from + CHOICES; time++) {
    const answer = chooseFor('typical', view, kernel, stream(name, `choice ${time}`));
    if (answer === null || !couldBe(kind, answer, view)) continue;
    const same = answers.get(JSON.stringify(answer));
    if (same) same.count++;
    else answers.set(JSON.stringify(answer), { answer, count: 1 });
  }
  return [...answers.values()].sort((a, b) => b.count - a.count);
}

interface Counted {
  readonly answer: AnswerChoice;
  readonly count: number;
}

interface Look {
  readonly view: SeatView;
  /** The review of the steps before. */
  readonly earlier: Review;
  readonly kind: MistakeCategory;
  readonly seed: number | undefined;
  /** Answers that must be mistakes; what cannot be reached any more is not looked at to the end. */
  readonly needed: number;
}

function mistakesAmong(
  tools: DealTools,
  look: Look,
  answers: readonly Counted[],
  looks: { left: number },
): Counted[] {
  const found: Counted[] = [];
  for (const [place, counted] of answers.entries()) {
    if (times(found) + times(answers.slice(place)) < look.needed || looks.left <= 0) return found;
    looks.left--;
    if (isMistake(tools, look, counted.answer)) found.push(counted);
  }
  return found;
}

function times(answers: readonly Counted[]): number {
  return answers.reduce((sum, { count }) => sum + count, 0);
}

function isMistake(
  { analyst, kernel }: DealTools,
  { view, earlier, kind, seed }: Look,
  answer: AnswerChoice,
): boolean {
  const answered = recordWithAnswer(view.record, answer, 'player');
  const terms = { budget: SHALLOW_BUDGET, ...(seed !== undefined && { seed }) };
  return reviewRound(answered, kernel, earlier).choices.some((choice, nth) => {
    if (nth < earlier.choices.length || choice.kind !== choiceOfMistake(kind)) return false;
    return mistakesOf({ ...choice, analysis: analyzeDecision(analyst, answered, nth, terms) }).includes(kind);
  });
}

interface TypicalPlay {
  readonly record: SeatRecord;
  /** What the player saw at each step, in their order. */
  readonly views: ReadonlyMap<Step, SeatView>;
}

/** What a typical player among three typical bots chose from the deal on, or for its first pass alone. */
function playTypically(kernel: Kernel, name: string, firstPass: boolean): TypicalPlay {
  const seed = textHash(name);
  const deal: RandomDeal = { seed, dealer: SEATS[stream(seed, 'dealer').below(4)]! };
  const round = begin(openRound(deal, STANDARD_TERMS.alone));
  const views = new Map<Step, SeatView>();
  const choose: Chooser = (view, random) => {
    const step = stepOf(view.stage);
    if (view.record.seat === SEAT && step !== null) views.set(step, view);
    return chooseFor('typical', view, kernel, random);
  };
  if (!firstPass) return { record: seatView(finishRound(round, choose).round, SEAT).record, views };
  const view = seatView(round, SEAT);
  const answer = choose(view, stream(seed, 'first pass'));
  const record = answer === null ? view.record : recordWithAnswer(view.record, answer, 'player');
  return { record, views };
}
