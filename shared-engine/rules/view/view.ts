// (round, audience) → what that audience may know; built up field by field, never by removing fields from the round.
import { type LeafProof, leafProof } from '../deal/commitment.ts';
import { dealTiles } from '../deal/deal.ts';
import { forFour, giverTo, neighbor, type Seat } from '../deal/seat.ts';
import type { OpenedRound } from '../exchange/recompute.ts';
import type { Closed, Resolved, ResolvedMove, Round, SubmittedPass } from '../exchange/round.ts';
import { MOVES, type PassStep } from '../exchange/schedule.ts';
import type { Terms } from '../exchange/terms.ts';
import { facesOf } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { PublicMove, PublicStep, SeatRecord, SeatStep } from './record.ts';

export type Audience = { readonly kind: 'seat'; readonly seat: Seat } | { readonly kind: 'spectator' };

/** The open phase of the round, as everybody may know it. */
export type PublicStage =
  | { readonly phase: 'passing'; readonly step: PassStep; readonly answered: Four<boolean> }
  | { readonly phase: 'voting'; readonly answered: Four<boolean> }
  | { readonly phase: 'asking'; readonly answered: Four<boolean> }
  | { readonly phase: 'giving'; readonly counts: Four<number>; readonly answered: Four<boolean> }
  | {
      readonly phase: 'closed';
      /** Null where racks stay private (rule Z2) and where a teacher prepared the deal (rule D4). */
      readonly opened: OpenedRound | null;
      /** All racks at the close where the room's terms reveal them (rule Z2), otherwise null. */
      readonly racks: Four<readonly Face[]> | null;
    };

/** This seat's own answer to the open step; null while it has given none. */
export type SeatAnswer =
  | { readonly kind: 'pass'; readonly tiles: readonly Face[]; readonly blind: number }
  | { readonly kind: 'vote'; readonly go: boolean }
  | { readonly kind: 'ask'; readonly count: number }
  | null;

interface PublicFacts {
  readonly dealer: Seat;
  /** Null where a teacher prepared the deal (rule D4). */
  readonly commitment: string | null;
  readonly terms: Terms;
  readonly stage: PublicStage;
}

export interface SeatView extends PublicFacts {
  readonly audience: 'seat';
  /** Now held, in rack order; submitted tiles are part of it until the fourth seat has submitted. */
  readonly rack: readonly Face[];
  readonly answer: SeatAnswer;
  readonly record: SeatRecord;
  /** At the close of a round whose racks stay private: what proves this seat's own first rack; otherwise null. */
  readonly ownLeaf: LeafProof | null;
}

export interface SpectatorView extends PublicFacts {
  readonly audience: 'spectator';
  readonly steps: readonly PublicStep[];
}

export type View = SeatView | SpectatorView;

export function viewFor(round: Round, audience: Audience): View {
  switch (audience.kind) {
    case 'seat':
      return seatView(round, audience.seat);
    case 'spectator':
      return { audience: 'spectator', ...publicFacts(round), steps: round.resolved.map(publicStep) };
  }
}

export function seatView(round: Round, seat: Seat): SeatView {
  return {
    audience: 'seat',
    ...publicFacts(round),
    rack: facesOf(round.racks[seat]),
    answer: seatAnswer(round, seat),
    record: recordOf(round, seat),
    ownLeaf: ownLeaf(round, seat),
  };
}

function publicFacts(round: Round): PublicFacts {
  return {
    dealer: round.deal.dealer,
    commitment: round.commitment,
    terms: round.terms,
    stage: publicStage(round),
  };
}

export function publicStage(round: Round): PublicStage {
  switch (round.phase) {
    case 'passing':
      return { phase: 'passing', step: round.step, answered: given(round.submitted) };
    case 'voting':
      return { phase: 'voting', answered: given(round.votes) };
    case 'asking':
      return { phase: 'asking', answered: given(round.asks) };
    case 'giving':
      return { phase: 'giving', counts: round.counts, answered: given(round.submitted) };
    case 'closed':
      return { phase: 'closed', opened: openedRound(round), racks: revealedRacks(round) };
  }
}

function given(answers: Four<unknown>): Four<boolean> {
  return forFour((seat) => answers[seat] !== null);
}

function openedRound({ deal, terms, resolved }: Closed): OpenedRound | null {
  if ('prepared' in deal || !terms.revealRacks) return null;
  return { seed: deal.seed, moves: resolved.filter((step) => step.kind === 'move') };
}

/** Of this seat's leaf alone: the seed stays on the server, because all four racks follow from it. */
export function ownLeaf({ phase, deal, roundId, terms }: Round, seat: Seat): LeafProof | null {
  if (phase !== 'closed' || 'prepared' in deal || terms.revealRacks) return null;
  return leafProof(deal, { roundId, dealer: deal.dealer, terms }, seat);
}

function revealedRacks(round: Closed): Four<readonly Face[]> | null {
  return round.terms.revealRacks ? forFour((seat) => facesOf(round.racks[seat])) : null;
}

export function seatAnswer(round: Round, seat: Seat): SeatAnswer {
  switch (round.phase) {
    case 'passing':
    case 'giving':
      return submittedPass(round.submitted[seat]);
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

function submittedPass(pass: SubmittedPass | null): SeatAnswer {
  return pass && { kind: 'pass', tiles: pass.tiles, blind: pass.blind };
}

function recordOf({ deal, terms, resolved, actualSteps }: Round, seat: Seat): SeatRecord {
  return {
    seat,
    dealer: deal.dealer,
    terms,
    start: facesOf(dealTiles(deal).racks[seat]),
    steps: resolved.map((step) => seatStep(step, seat)),
    ...(actualSteps && { actualSteps: actualSteps.map((step) => step && seatStep(step, seat)) }),
  };
}

export function publicStep(step: Resolved): PublicStep {
  switch (step.kind) {
    case 'move':
      return publicMove(step);
    case 'vote':
      return { kind: 'vote', go: step.go, by: step.by };
    case 'ask':
      return { kind: 'ask', asked: step.asked, agreed: step.agreed, by: step.by };
  }
}

function publicMove({ kind, step, blind, voided, by }: ResolvedMove): PublicMove {
  return { kind, step, blind, voided, by };
}

export function seatStep(step: Resolved, seat: Seat): SeatStep {
  switch (step.kind) {
    case 'move': {
      const { toward } = MOVES[step.step];
      // Each field by its name, as in `publicMove`: one is made for every seat and step, and again at the close.
      return {
        kind: 'move',
        step: step.step,
        blind: step.blind,
        voided: step.voided,
        by: step.by,
        to: neighbor(seat, toward),
        from: giverTo(seat, toward),
        gave: step.gave[seat],
        received: step.received[seat],
      };
    }
    case 'vote':
      return { kind: 'vote', go: step.go, by: step.by };
    case 'ask':
      return { kind: 'ask', asked: step.asked, agreed: step.agreed, by: step.by };
  }
}
