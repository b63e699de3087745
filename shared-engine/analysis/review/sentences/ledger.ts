// What the deal and luck brought and what the choices cost, in words whose whole numbers add up; then the round as a whole.
import { type Actor, type Face, SUITS } from '../../../rules/index.ts';
import { type NeighborSuits, USUAL } from '../../ledger/neighbor-suits.ts';
import type { Ledger, LedgerSums } from '../../ledger/settle.ts';
import type { FedNeighbor } from '../review.ts';
import { capitalized, NEIGHBORS, VOICES, winsOf } from './phrases.ts';
import { theTile } from './tiles.ts';

/** From this share on a guess at a neighbor's tiles is told. */
export const LIKELY = 0.5;

/** What else is told of the round: its losses choice by choice together, and how far away its rack was. */
export interface ToldBeside {
  readonly losses: number;
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
    ...(average === null
      ? []
      : [
          `Our steady player, a plain bot, wins about ${Math.round(average)} in 100 games against club players with an average deal in this seat.`,
        ]),
    `${capitalized(owner)} first tiles were worth about ${began}${average === null ? ' wins in 100 games' : ''}.`,
    changeSentence('The tiles that came', luck),
    choiceSentence(`${capitalized(owner)} choices`, own!, isClear),
    ...(others === 0 ? [] : [changeSentence('What a bot chose while you were away', others!)]),
    ...(byClass === 0 ? [] : [changeSentence('Going on as the class did', byClass!)]),
    `At the close ${owner} rack was worth about ${ended}.`,
    ...((toGoStart - toGoEnd) * (began - ended) > 0
      ? ['Worth is more than tiles away: jokers, pairs and the other racks count too.']
      : []),
    ...(isMore(beside.losses, -own!)
      ? [
          'The losses told step by step add up to more: they compare with the best we found, which our steady player often misses.',
        ]
      : []),
  ];
}

/** Whether what is told choice by choice is so much more than the cost of them all that a reader would wonder. */
function isMore(losses: number, cost: number): boolean {
  return losses > 0.5 + 1.5 * Math.max(0, cost);
}

/** What no single choice tells: one neighbor helped by several passes, and what the dealer discards first. */
export function wholeRoundSentences(
  { entries, neighbors }: Ledger,
  fed: FedNeighbor | null,
  firstDiscard: Face | null,
): readonly string[] {
  const { subject, whose } = VOICES[chooserOf(entries)];
  const helped =
    fed === null
      ? []
      : [
          `In ${fed.passes} passes ${subject} gave the player ${NEIGHBORS[fed.toward]} tiles that cost ${subject === 'you' ? 'you ' : ''}about ${winsOf(fed.cost.value)} in 100 games.`,
        ];
  const east =
    firstDiscard === null
      ? []
      : [
          `As East ${subject} ${subject === 'you' ? 'discard' : 'discards'} first: ${whose} closest hands need ${theTile(firstDiscard)} least.`,
        ];
  return [...helped, ...guessSentence(neighbors), ...east];
}

/** The surest guess at a neighbor's longest suit, where it is likely enough. */
function guessSentence(neighbors: readonly NeighborSuits[]): readonly string[] {
  const guesses = neighbors.flatMap(({ toward, longest }) =>
    SUITS.map((suit) => ({ toward, suit, share: longest[suit] })),
  );
  const [surest] = guesses.toSorted((a, b) => b.share - a.share);
  if (surest === undefined || surest.share < LIKELY) return [];
  const [one, other] = SUITS.filter((suit) => suit !== surest.suit);
  const chances = `chances are about ${inTen(surest.share)} in 10, not the usual ${inTen(USUAL)},`;
  const held = `the player ${NEIGHBORS[surest.toward]} ended with more ${surest.suit}s than ${one}s or ${other}s`;
  return [`Going by the passes, ${chances} that ${held}.`];
}

function inTen(share: number): number {
  return Math.round(10 * share);
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
  const chance = isClear ? '' : ', which may be chance';
  return change > 0
    ? `${what} brought about ${change} more than our steady player’s would have${chance}.`
    : `${what} cost about ${-change}, compared with our steady player’s${chance}.`;
}
