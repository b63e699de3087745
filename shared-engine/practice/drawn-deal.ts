// Deals drawn for a kind of mistake: those in which a typical player would make it, up to the choice where that happens.
import {
  type Analyst,
  analyzeDecision,
  choiceOfMistake,
  decisionsIn,
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
import { couldBe } from './possible-mistake.ts';
import { textHash } from './stored-round.ts';

/** Where whoever is asked sits. */
const SEAT: Seat = 0;
/** Choices played on before a kind of mistake is taken to be too rare for this card: half a minute on a slow phone. */
const MOST_LOOKS = 150;
const MOST_DEALS = 200;
/**
 * Times that the player chooses anew, and how often that must be the mistake as well, or its noise alone may have made it.
 * Where such deals are rare, the second half of the search asks for less.
 */
const AGAIN = 4;
const NEEDED = { first: 3, later: 2 } as const;
/** Seed of the sampled deals for them; any number but the seed of the first would do. */
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
 * wished for: made once, and again each time that the player chooses anew. Where that is too rare, a deal by chance.
 */
export function* drawDeal(
  tools: DealTools,
  { kind, firstPass }: DealWish,
  seed: string,
): Generator<number, DrawnDeal> {
  const looks = { left: MOST_LOOKS };
  for (let nth = 1; kind && canBeDrawn(kind, firstPass) && looks.left > 0 && nth <= MOST_DEALS; nth++) {
    const played = playTypically(tools.kernel, `${seed} deal ${nth}`, firstPass);
    const isEarly = looks.left > MOST_LOOKS / 2 && nth <= MOST_DEALS / 2;
    const step = temptation(tools, played, { kind, needed: isEarly ? NEEDED.first : NEEDED.later }, looks);
    if (step !== null) return { record: played.record, step, kind };
    yield nth;
  }
  const { record } = playTypically(tools.kernel, `${seed} by chance`, firstPass);
  const { choices } = reviewRound(record, tools.kernel);
  const { step } = choices[stream(seed, 'step').below(choices.length)]!;
  return { record, step, kind: null };
}

/** Nobody says an aim for a deal that is only drawn; before the first pass nothing has arrived, and nothing is late. */
function canBeDrawn(kind: MistakeCategory, firstPass: boolean): boolean {
  if (kind === 'aim-left') return false;
  if (!firstPass) return true;
  return choiceOfMistake(kind) === 'pass' && kind !== 'new-multiple' && kind !== 'committed-too-late';
}

/** The first step at which the choice of the record is a mistake of this kind, and other choices of the player as well. */
function temptation(
  { analyst, kernel }: DealTools,
  { record, views, name }: TypicalPlay,
  { kind, needed }: { readonly kind: MistakeCategory; readonly needed: number },
  looks: { left: number },
): Step | null {
  const review = reviewRound(record, kernel);
  for (const [nth, choice] of review.choices.entries()) {
    const view = views.get(choice.step);
    if (view === undefined || !couldBe(kind, choice)) continue;
    if (looks.left-- <= 0) return null;
    const analysis = analyzeDecision(analyst, record, nth, { budget: SHALLOW_BUDGET });
    if (!mistakesOf({ ...choice, analysis }).includes(kind)) continue;
    let made = 0;
    for (let time = 1; time <= AGAIN && made < needed && made + AGAIN - time + 1 >= needed; time++) {
      looks.left--;
      const answer = chooseFor('typical', view, kernel, stream(name, `again ${time}`));
      if (answer !== null && isMistake({ analyst, kernel }, { view, answer, review, kind })) made++;
    }
    if (made >= needed) return choice.step;
  }
  return null;
}

interface ChosenAgain {
  readonly view: SeatView;
  readonly answer: AnswerChoice;
  /** Of the whole record: its earlier steps need not be reviewed again. */
  readonly review: Review;
  readonly kind: MistakeCategory;
}

/** On other sampled deals: a search over many deals would find the one where chance favored another choice most. */
function isMistake({ analyst, kernel }: DealTools, { view, answer, review, kind }: ChosenAgain): boolean {
  const before = decisionsIn(view.record).length;
  const answered = recordWithAnswer(view.record, answer, 'player');
  const earlier = { ...review, choices: review.choices.slice(0, before) };
  const { choices } = reviewRound(answered, kernel, earlier);
  return choices.some((choice, nth) => {
    if (nth < before || !couldBe(kind, choice)) return false;
    const terms = { budget: SHALLOW_BUDGET, seed: SECOND_ANALYSIS_SEED };
    return mistakesOf({ ...choice, analysis: analyzeDecision(analyst, answered, nth, terms) }).includes(kind);
  });
}

interface TypicalPlay {
  readonly name: string;
  readonly record: SeatRecord;
  /** What the player saw at each step. */
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
  if (!firstPass) return { name, record: seatView(finishRound(round, choose).round, SEAT).record, views };
  const view = seatView(round, SEAT);
  const answer = choose(view, stream(seed, 'first pass'));
  const record = answer === null ? view.record : recordWithAnswer(view.record, answer, 'player');
  return { name, record, views };
}
