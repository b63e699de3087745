// (round, audience) → what that audience may know, built up field by field; nothing is ever stripped from a whole.
import { type Deal, dealTiles } from '../deal/deal.ts';
import { forFour, giverTo, neighbour, type Seat } from '../deal/seat.ts';
import type {
  Asking,
  Closed,
  Giving,
  Passing,
  Round,
  SealedPass,
  Settled,
  SettledMove,
  Voting,
} from '../exchange/round.ts';
import { MOVES, type PassStep } from '../exchange/schedule.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { PublicMove, PublicStep, SeatRecord, SeatStep } from './record.ts';

export type Audience = { readonly kind: 'seat'; readonly seat: Seat } | { readonly kind: 'watcher' };

/** Where the round stands, as everybody may know it. */
export type PublicStage =
  | { readonly phase: 'passing'; readonly step: PassStep; readonly sealed: Four<boolean> }
  | { readonly phase: 'voting'; readonly answered: Four<boolean> }
  | { readonly phase: 'asking'; readonly answered: Four<boolean> }
  | { readonly phase: 'giving'; readonly counts: Four<number>; readonly sealed: Four<boolean> }
  | {
      readonly phase: 'closed';
      /** The opened deal, or null where a teacher prepared it (rule D4). */
      readonly seed: string | null;
      /** Racks at the close where the room's terms lay them open (rule Z2), otherwise null. */
      readonly racks: Four<readonly Face[]> | null;
    };

/** This seat's own answer to the step that is open; null while it has given none. */
export type OwnAnswer =
  | { readonly kind: 'pass'; readonly tiles: readonly Face[]; readonly blind: number }
  | { readonly kind: 'vote'; readonly go: boolean }
  | { readonly kind: 'ask'; readonly count: number }
  | null;

interface PublicFacts {
  readonly dealer: Seat;
  /** Null says that a teacher prepared this deal (rule D4). */
  readonly commitment: string | null;
  readonly layOpen: boolean;
  readonly stage: PublicStage;
}

export interface SeatView extends PublicFacts {
  readonly audience: 'seat';
  /** Now held, in rack order; sealed tiles are part of it until the fourth seal. */
  readonly rack: readonly Face[];
  readonly answer: OwnAnswer;
  readonly record: SeatRecord;
}

export interface SpectatorView extends PublicFacts {
  readonly audience: 'watcher';
  readonly steps: readonly PublicStep[];
}

export type View = SeatView | SpectatorView;

export function viewFor(round: Round, audience: Audience): View {
  switch (audience.kind) {
    case 'seat':
      return seatView(round, audience.seat);
    case 'watcher':
      return { audience: 'watcher', ...publicFacts(round), steps: round.settled.map(publicStep) };
  }
}

export function seatView(round: Round, seat: Seat): SeatView {
  return {
    audience: 'seat',
    ...publicFacts(round),
    rack: facesOf(round.racks[seat]),
    answer: ownAnswer(round, seat),
    record: recordOf(round, seat),
  };
}

function publicFacts(round: Round): PublicFacts {
  return {
    dealer: round.deal.dealer,
    commitment: round.commitment,
    layOpen: round.terms.layOpen,
    stage: publicStage(round),
  };
}

export function publicStage(round: Round): PublicStage {
  switch (round.phase) {
    case 'passing':
      return { phase: 'passing', step: round.step, sealed: given(round.sealed) };
    case 'voting':
      return { phase: 'voting', answered: given(round.votes) };
    case 'asking':
      return { phase: 'asking', answered: given(round.asks) };
    case 'giving':
      return { phase: 'giving', counts: round.counts, sealed: given(round.sealed) };
    case 'closed':
      return { phase: 'closed', seed: openedSeed(round.deal), racks: openRacks(round) };
  }
}

function given(answers: Four<unknown>): Four<boolean> {
  return forFour((seat) => answers[seat] !== null);
}

function openedSeed(deal: Deal): string | null {
  return 'prepared' in deal ? null : deal.seed;
}

function openRacks(round: Closed): Four<readonly Face[]> | null {
  return round.terms.layOpen ? forFour((seat) => facesOf(round.racks[seat])) : null;
}

export function ownAnswer(round: Passing | Voting | Asking | Giving | Closed, seat: Seat): OwnAnswer {
  switch (round.phase) {
    case 'passing':
    case 'giving':
      return ownPass(round.sealed[seat]);
    case 'voting': {
      const vote = round.votes[seat];
      return vote && { kind: 'vote', go: vote.value };
    }
    case 'asking': {
      const ask = round.asks[seat];
      return ask && { kind: 'ask', count: ask.value };
    }
    case 'closed':
      return null;
  }
}

function ownPass(pass: SealedPass | null): OwnAnswer {
  return pass && { kind: 'pass', tiles: pass.tiles, blind: pass.blind };
}

function recordOf({ deal, settled, own }: Round, seat: Seat): SeatRecord {
  return {
    seat,
    dealer: deal.dealer,
    start: facesOf(dealTiles(deal).racks[seat]),
    steps: settled.map((step) => seatStep(step, seat)),
    ...(own && { own: own.map((step) => step && seatStep(step, seat)) }),
  };
}

export function publicStep(settled: Settled): PublicStep {
  switch (settled.kind) {
    case 'move':
      return publicMove(settled);
    case 'vote':
      return { kind: 'vote', go: settled.go, by: settled.by };
    case 'ask':
      return { kind: 'ask', asked: settled.asked, agreed: settled.agreed, by: settled.by };
  }
}

function publicMove({ kind, step, blind, voided, by }: SettledMove): PublicMove {
  return { kind, step, blind, voided, by };
}

export function seatStep(settled: Settled, seat: Seat): SeatStep {
  switch (settled.kind) {
    case 'move': {
      const { toward } = MOVES[settled.step];
      return {
        ...publicMove(settled),
        to: neighbour(seat, toward),
        from: giverTo(seat, toward),
        gave: settled.own[seat],
        received: settled.kept[seat],
      };
    }
    case 'vote':
      return { kind: 'vote', go: settled.go, by: settled.by };
    case 'ask':
      return { kind: 'ask', asked: settled.asked, agreed: settled.agreed, by: settled.by };
  }
}
