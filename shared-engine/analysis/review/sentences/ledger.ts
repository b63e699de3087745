// What the deal and luck brought and what the choices cost, in words whose whole numbers add up; then the round as a whole.
import type { Actor, Face } from '../../../rules/index.ts';
import type { Ledger, LedgerSums } from '../../ledger/settle.ts';
import { VERDICT_NAMES } from '../choice-verdict.ts';
import type { ChoiceReview, FedNeighbor } from '../review.ts';
import { guessSentences } from './guess.ts';
import { choiceName } from './headline.ts';
import { thatKind } from './pass.ts';
import { capitalized, listed, playerAt, VOICES, winsOf } from './phrases.ts';
import { theTile } from './tiles.ts';

/** What else is told of the round: its losses choice by choice, and how far away its rack was. */
export interface ToldBeside {
  readonly losses: readonly number[];
  /** Of each choice of which we can't say, how much it may have lost at most. */
  readonly unsure: readonly number[];
  /** The choices told to be worse than another one, by how many wins in 100 games. */
  readonly worse: readonly (Pick<ChoiceReview, 'kind' | 'step'> & { readonly told: number })[];
  readonly toGoStart: number;
  readonly toGoEnd: number;
}

export function ledgerSentences(ledger: LedgerSums, beside: ToldBeside): readonly string[] {
  const { average, start, close, choices, standIns, jumps } = ledger;
  const { toGoStart, toGoEnd } = beside;
  const { owner } = VOICES[chooserOf(ledger.entries)];
  const [began, ended] = [Math.round(start.value), Math.round(close.value)];
  const [own, others, byClass] = [choices.value, standIns, jumps].map((value) => Math.round(value));
  // What is left over by rounding is luck as well.
  const luck = ended - began - own! - others! - byClass!;
  const isClear = Math.abs(choices.value) > choices.halfWidth;
  return [
    ...(average === null ? [] : averageSentences(Math.round(average))),
    `${capitalized(owner)} first tiles were worth about ${winsOf(began)}${average === null ? ' in 100 games' : ''}.`,
    changeSentence('The tiles that came and the others’ choices', luck),
    choiceSentence(`${capitalized(owner)} choices`, own!, isClear),
    ...(others === 0 ? [] : [changeSentence('What a bot chose while you were away', others!)]),
    ...(byClass === 0 ? [] : [changeSentence('Going on as the class did', byClass!)]),
    `At the close ${owner} rack was worth about ${ended}.`,
    ...(isClear ? aloneSentence(ledger, beside) : []),
    ...worthSentence(toGoStart - toGoEnd, ended - began),
    ...sumSentence(beside, -own!, isClear),
  ];
}

/** From so many wins in 100 games on a choice that makes at least half of them all is named. */
const WORTH_NAMING = 3;

/**
 * The choice without which the sum would be another matter. Its step compares it with the best that was found, not with the
 * steady player's: where the two part, nothing is said.
 */
function aloneSentence({ entries, choices }: LedgerSums, { worse }: ToldBeside): readonly string[] {
  const by = chooserOf(entries);
  const own = entries
    .filter((entry) => entry.by === by)
    .toSorted((a, b) => Math.abs(b.choice) - Math.abs(a.choice));
  const [most] = own;
  if (most === undefined || own.length < 2 || most.choice * choices.value <= 0) return [];
  const wins = Math.abs(most.choice);
  if (wins < WORTH_NAMING || 2 * wins < Math.abs(choices.value)) return [];
  const step = worse.find((one) => one.kind === most.kind && one.step === most.step);
  const isWorse = step !== undefined;
  if (isWorse !== most.choice < 0) return [];
  // What its step tells may be much less: it takes the others for other players.
  if (isWorse && 2 * step.told < Math.abs(choices.value)) return [];
  const { owner } = VOICES[by];
  const all = `${owner} choices ${isWorse ? 'cost' : 'brought'}`;
  const unusual = isWorse ? [] : [OTHERWISE];
  // Its own number would stand beside that of its step, which is of other players and another choice to compare with.
  if (Math.round(wins) <= Math.abs(Math.round(choices.value))) {
    return [`One choice makes at least half of what ${all}: ${choiceName(most)}.`, ...unusual];
  }
  const rest = `${capitalized(owner)} other choices ${isWorse ? 'brought some of that back' : 'cost some of that again'}.`;
  return [`One choice alone makes more than all that ${all}: ${choiceName(most)}.`, ...unusual, rest];
}

/** Its step says how good the choice was, and not how unusual. */
const OTHERWISE = 'There our steady player would have chosen otherwise.';

/** An even share of what four players win, where no game ends without a winner. */
const EVEN_SHARE = 25;

/** A reader who counts four players expects less than the steady player wins. */
function averageSentences(average: number): readonly string[] {
  const wins = `Our steady player, a simple bot, wins about ${average} in 100 games from an average deal in this seat, against club players.`;
  if (average <= EVEN_SHARE) return [wins];
  return [
    wins,
    `Among four equal players each wins ${EVEN_SHARE} at most. The steady player wins more, mostly because it passes better.`,
  ];
}

/** Where a rack came closer and is worth less, or the other way round. */
function worthSentence(closer: number, more: number): readonly string[] {
  if (closer * more >= 0) return [];
  return closer > 0
    ? ['Coming closer is not all: the others mostly do so too, and jokers and pairs count as well.']
    : ['Tiles away are not all: jokers, pairs and the other racks count too.'];
}

/**
 * Why what is told choice by choice is not the cost of them all; nothing where a reader who adds it up would not wonder. The
 * other sum is not told: two numbers for what looks like one thing are read as an error.
 */
function sumSentence({ losses, unsure }: ToldBeside, cost: number, isClear: boolean): readonly string[] {
  const sum = losses.reduce((all, loss) => all + loss, 0);
  if (Math.abs(sum - cost) <= Math.max(1, roundedBy(losses)) || (sum === 0 && cost <= 0)) return [];
  const isOne = losses.length === 1;
  const told = isOne ? 'The one loss told step by step' : 'The losses told step by step';
  if (sum > cost) {
    const more =
      cost > 0
        ? isOne
          ? 'is larger'
          : 'add up to more'
        : isOne
          ? 'is no contradiction'
          : 'are no contradiction';
    const measured = `${isOne ? 'It' : 'Each'} is measured against the best we found`;
    return [`${told} ${more}.`, `${measured}, which our steady player often misses.`];
  }
  // What may be chance needs no reason.
  if (!isClear) return [];
  const stronger = 'for single steps we take the others for a little stronger than club players';
  if (sum === 0) return ['No one step shows that cost: small costs may add up.', `${capitalized(stronger)}.`];
  const less = `${told} ${isOne ? 'is smaller' : 'add up to less'}`;
  // What the unsure steps cannot hold lies elsewhere.
  const room = unsure.reduce((all, most) => all + most, 0);
  if (room < cost - sum) return [`${less}.`, `${capitalized(stronger)}, so wins are rarer.`];
  const steps = unsure.length === 1 ? 'step' : 'steps';
  return [`${less}: the rest may lie in the ${steps} marked ${VERDICT_NAMES['cant-say']}.`];
}

/** How far off the sum of what is told may be by rounding, with the whole number it is held against. */
function roundedBy(losses: readonly number[]): number {
  return losses.reduce(
    (all, loss) => all + (loss === 0 ? 0 : Number.isInteger(loss) && loss >= 3 ? 0.5 : 0.05),
    0.5,
  );
}

/** What follows from all choices together. */
export interface WholeRound {
  readonly fed: FedNeighbor | null;
  readonly back: readonly Face[];
  readonly firstDiscard: Face | null;
}

/** What no single choice tells: a neighbor helped by several passes, tiles that came back, what East discards first. */
export function wholeRoundSentences(
  { entries, neighbors }: Ledger,
  { fed, back, firstDiscard }: WholeRound,
): readonly string[] {
  const { subject, whose } = VOICES[chooserOf(entries)];
  const isYou = subject === 'you';
  return [
    ...(fed === null
      ? []
      : [
          `In ${fed.passes} passes ${subject} gave ${playerAt(fed.toward)} more help than players usually do.`,
          `That probably cost ${isYou ? 'you ' : ''}about ${winsOf(fed.cost.value)} in 100 games.`,
        ]),
    ...backSentence(subject, back),
    ...guessSentences(neighbors),
    ...(firstDiscard === null
      ? []
      : [
          `As East ${subject} ${isYou ? 'discard' : 'discards'} first: the tile ${whose} closest hands need least is ${theTile(firstDiscard)}.`,
        ]),
  ];
}

/** So many kinds of tiles are named at most, and one more where it would be the only other. */
const MOST_NAMED = 4;

function backSentence(subject: string, back: readonly Face[]): readonly string[] {
  if (back.length === 0) return [];
  const named = back.length > MOST_NAMED + 1 ? back.slice(0, MOST_NAMED) : back;
  const which = listed([...named.map(theTile), ...(named.length < back.length ? ['others'] : [])]);
  return [`${capitalized(subject)} had passed ${which}; ${thatKind(back)} came in and stayed.`];
}

/** Whose choices are told: the player's, or where the player made none, those of the seat. */
function chooserOf(entries: LedgerSums['entries']): Actor {
  return entries.find(({ by }) => by === 'player')?.by ?? entries[0]?.by ?? 'player';
}

function changeSentence(what: string, change: number): string {
  if (change === 0) return `${what} changed nothing to speak of.`;
  return change > 0 ? `${what} raised that by about ${change}.` : `${what} lowered that by about ${-change}.`;
}

function choiceSentence(what: string, change: number, isClear: boolean): string {
  if (change === 0) return `${what} did as well as our steady player’s would have.`;
  const chance = isClear ? '' : '; that may be chance';
  return change > 0
    ? `${what} brought about ${change} more than our steady player’s would have${chance}.`
    : `${what} cost about ${-change} compared with our steady player’s${chance}.`;
}
