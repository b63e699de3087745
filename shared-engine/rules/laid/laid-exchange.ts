// The exchange of one seat at a table with real tiles, laid in step by step: what it held, chose and got (rules R1–R5).
import { dealtSize } from '../deal/deal.ts';
import { forFour, giverTo, neighbor, SEATS, type Seat } from '../deal/seat.ts';
import type { AnswerChoice } from '../exchange/command.ts';
import { objection } from '../exchange/legality.ts';
import { decisionFor, type PendingDecision, type Stage, stepOf } from '../exchange/pending-decision.ts';
import { MOVES, PASS_SIZE } from '../exchange/schedule.ts';
import { stepAfter } from '../exchange/step-after.ts';
import type { Terms } from '../exchange/terms.ts';
import { addTo, type Bag, bagOf, sortFaces, takeFrom } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { SeatRecord, SeatStep } from '../view/record.ts';
import { arrivalProblem, rackProblem } from './checks.ts';
import { type LaidProblem, laidProblem } from './problem.ts';

export interface LaidTable {
  readonly seat: Seat;
  readonly dealer: Seat;
  readonly terms: Terms;
}

/** What came of the open step once the seat has chosen. */
export type LaidOutcome =
  /** `blind` is how many tiles each seat passed blind, the seat's own number among them. */
  | { readonly kind: 'arrival'; readonly tiles: readonly Face[]; readonly blind: Four<number> }
  /** The others who voted to stop. */
  | { readonly kind: 'votes'; readonly stopped: readonly Seat[] }
  /** How many tiles each seat asked for, the seat's own number among them. */
  | { readonly kind: 'asks'; readonly asked: Four<number> };

export type LaidEntry = { readonly kind: 'choice'; readonly choice: AnswerChoice } | LaidOutcome;

export interface LaidExchange {
  readonly table: LaidTable;
  readonly rack: Bag;
  /** The steps that are over. */
  readonly steps: readonly SeatStep[];
  readonly stage: Stage;
  /** The choice whose outcome is still to be laid in; null while the seat is to choose. */
  readonly chosen: AnswerChoice | null;
  /** As dealt, in rack order. */
  readonly start: readonly Face[];
}

export type LaidResult = { readonly ok: true; readonly exchange: LaidExchange } | LaidProblem;

/** The exchange before the first pass. */
export function layRack(table: LaidTable, tiles: readonly Face[]): LaidResult {
  const problem = rackProblem(tiles, dealtSize(table.seat, table.dealer));
  if (problem) return problem;
  const stage: Stage = { phase: 'passing', step: 'first-right' };
  return laid({ table, rack: bagOf(tiles), steps: [], stage, chosen: null, start: sortFaces(tiles) });
}

/** The exchange with one entry more; every entry either chooses or says what came of the choice. */
export function layIn(exchange: LaidExchange, entry: LaidEntry): LaidResult {
  return entry.kind === 'choice' ? layChoice(exchange, entry.choice) : layOutcome(exchange, entry);
}

/** All entries in order, or the problem of the first that cannot be; undoing is leaving out the last one. */
export function layAll(table: LaidTable, tiles: readonly Face[], entries: readonly LaidEntry[]): LaidResult {
  return entries.reduce<LaidResult>(
    (result, entry) => (result.ok ? layIn(result.exchange, entry) : result),
    layRack(table, tiles),
  );
}

/** What the open step asks of the seat; null once it has chosen, and when the exchange is over. */
export function laidDecision({ table, stage, chosen }: LaidExchange): PendingDecision | null {
  return chosen === null ? decisionFor(stage, table.seat, table.terms) : null;
}

/** Enough to judge every choice as in a round (rule R5). */
export function laidRecord({ table, start, steps }: LaidExchange): SeatRecord {
  return { ...table, start, steps };
}

function layChoice(exchange: LaidExchange, choice: AnswerChoice): LaidResult {
  const { table, stage, rack, chosen } = exchange;
  const decision = decisionFor(stage, table.seat, table.terms);
  const context = { step: stepOf(stage), decision, answered: chosen !== null, rack };
  const rejection = objection(context, choice);
  return rejection ? { ...rejection, tile: null } : laid({ ...exchange, chosen: choice });
}

function layOutcome(exchange: LaidExchange, outcome: LaidOutcome): LaidResult {
  const { chosen } = exchange;
  switch (outcome.kind) {
    case 'arrival':
      return chosen?.kind === 'pass' ? layArrival(exchange, chosen, outcome) : notNow();
    case 'votes':
      return chosen?.kind === 'vote' ? layVotes(exchange, chosen.go, outcome.stopped) : notNow();
    case 'asks':
      return chosen?.kind === 'ask' ? layAsks(exchange, chosen.count, outcome.asked) : notNow();
  }
}

function layArrival(
  exchange: LaidExchange,
  { step, tiles: gave, blind: own }: AnswerChoice & { kind: 'pass' },
  { tiles, blind }: LaidOutcome & { kind: 'arrival' },
): LaidResult {
  const { seat, terms } = exchange.table;
  if (blind[seat] !== own || !blind.every(isWholeUpToThree)) {
    return laidProblem('wrong-blind', 'Say for each seat whether it passed 0, 1, 2 or 3 tiles blind.');
  }
  const left = takeFrom(exchange.rack, gave)!;
  const problem = arrivalProblem(left, tiles, gave.length);
  if (problem) return problem;
  const { toward } = MOVES[step];
  const over: SeatStep = {
    kind: 'move',
    step,
    blind,
    voided: voidedSlots(blind),
    by: allPlayers,
    to: neighbor(seat, toward),
    from: giverTo(seat, toward),
    gave: sortFaces(gave),
    received: sortFaces(tiles),
  };
  return laid(after(exchange, over, stageFor(stepAfter(over, terms), [0, 0, 0, 0]), addTo(left, tiles)));
}

function layVotes(exchange: LaidExchange, own: boolean, stopped: readonly Seat[]): LaidResult {
  const { seat, terms } = exchange.table;
  if (stopped.includes(seat)) return laidProblem('wrong-votes', 'Name only other seats that stopped.');
  const go = forFour((one) => (one === seat ? own : !stopped.includes(one)));
  const over: SeatStep = { kind: 'vote', go, by: allPlayers };
  return laid(after(exchange, over, stageFor(stepAfter(over, terms), [0, 0, 0, 0])));
}

function layAsks(exchange: LaidExchange, own: number, asked: Four<number>): LaidResult {
  const { seat, terms } = exchange.table;
  if (asked[seat] !== own || !asked.every(isWholeUpToThree)) {
    return laidProblem('wrong-asks', 'Say for each seat whether it asked for 0, 1, 2 or 3 tiles.');
  }
  const agreed = forFour((one) => Math.min(asked[one], asked[neighbor(one, 'across')]));
  const over: SeatStep = { kind: 'ask', asked, agreed, by: allPlayers };
  // What the two others pass each other nobody else sees, so that the exchange is over for a pair that agreed on none.
  const next = agreed[seat] === 0 ? 'close' : stepAfter(over, terms);
  return laid(after(exchange, over, stageFor(next, agreed)));
}

const allPlayers = forFour(() => 'player' as const);

function after(
  exchange: LaidExchange,
  over: SeatStep,
  stage: Stage,
  rack: Bag = exchange.rack,
): LaidExchange {
  return { ...exchange, rack, steps: [...exchange.steps, over], stage, chosen: null };
}

function stageFor(next: ReturnType<typeof stepAfter>, counts: Four<number>): Stage {
  switch (next) {
    case 'close':
      return { phase: 'closed' };
    case 'vote':
      return { phase: 'voting' };
    case 'courtesy-ask':
      return { phase: 'asking' };
    case 'courtesy-pass':
      return { phase: 'giving', counts };
    default:
      return { phase: 'passing', step: next };
  }
}

/** Slots that no tile can fill where all four pass blind (rule B4). */
function voidedSlots(blind: Four<number>): number {
  const ownTiles = SEATS.reduce<number>((sum, seat) => sum + PASS_SIZE - blind[seat], 0);
  return blind.every((count) => count > 0) ? Math.max(0, PASS_SIZE - ownTiles) : 0;
}

function isWholeUpToThree(count: number): boolean {
  return Number.isInteger(count) && count >= 0 && count <= PASS_SIZE;
}

function laid(exchange: LaidExchange): LaidResult {
  return { ok: true, exchange };
}

function notNow(): LaidProblem {
  return laidProblem('not-now', 'Choose first; what came of it is laid in afterwards.');
}
