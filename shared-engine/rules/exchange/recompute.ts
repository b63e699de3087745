// Deals and plays an opened round again and says whether it is the one that was committed to (rules D4, Z2).
import { commitmentOf, type DealHead } from '../deal/commitment.ts';
import { dealTiles, isSeed } from '../deal/deal.ts';
import { forFour, neighbor, SEATS, type Seat } from '../deal/seat.ts';
import { addTo, type Bag, bagOf, takeFrom } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import { passObjection } from './legality.ts';
import { blindDraws, resolveMove } from './resolve.ts';
import type { ResolvedMove } from './round.ts';
import { hasStep, MOVE_STEPS, type MoveStep, mayPassBlind, PASS_SIZE } from './schedule.ts';
import type { Terms } from './terms.ts';

/** What opens a round to everybody where the racks are revealed: all leaves and all draws follow from the seed. */
export interface OpenedRound {
  readonly seed: string;
  /** Every pass, by whom and of which tiles. */
  readonly moves: readonly ResolvedMove[];
}

export interface RoundClaim extends OpenedRound, DealHead {
  readonly terms: Terms;
  readonly commitment: string;
  /** All racks as they were said to be at the close. */
  readonly racks: Four<readonly Face[]>;
  /** What one seat has seen for itself: its rack as dealt, and what it gave and received in each pass. */
  readonly seen: {
    readonly seat: Seat;
    readonly rack: readonly Face[];
    readonly moves: readonly SeenMove[];
  };
}

export interface SeenMove {
  readonly step: MoveStep;
  readonly gave: readonly Face[];
  readonly received: readonly Face[];
}

export type RoundCheck =
  | { readonly ok: true }
  | { readonly ok: false; readonly reason: 'bad-seed' | 'wrong-commitment' | 'wrong-rack' | 'wrong-end' }
  /** The passes do not come out as they are said to, beginning with this step. */
  | { readonly ok: false; readonly reason: 'wrong-move'; readonly step: MoveStep };

export function checkRound(claim: RoundClaim): RoundCheck {
  const { seed, dealer, commitment, seen, moves, racks } = claim;
  if (!isSeed(seed)) return { ok: false, reason: 'bad-seed' };
  const deal = { seed, dealer };
  if (commitmentOf(deal, claim) !== commitment) return { ok: false, reason: 'wrong-commitment' };
  let held = dealTiles(deal).racks;
  if (!isSame(held[seen.seat], seen.rack)) return { ok: false, reason: 'wrong-rack' };
  let place = -1;
  for (const [nth, move] of moves.entries()) {
    const before = place;
    place = MOVE_STEPS.indexOf(move.step);
    const next = place > before && wasSeen(move, seen.seat, seen.moves[nth]) && replayed(move, held, claim);
    if (!next) return { ok: false, reason: 'wrong-move', step: move.step };
    held = next;
  }
  const same = moves.length === seen.moves.length && SEATS.every((seat) => isSame(held[seat], racks[seat]));
  return same ? { ok: true } : { ok: false, reason: 'wrong-end' };
}

function wasSeen(move: ResolvedMove, seat: Seat, seen: SeenMove | undefined): boolean {
  return (
    seen?.step === move.step &&
    isSame(bagOf(seen.gave), move.gave[seat]) &&
    isSame(bagOf(seen.received), move.received[seat])
  );
}

/** The racks after the move; null where it was not allowed or its draws come out otherwise. */
function replayed(
  move: ResolvedMove,
  racks: Four<Bag>,
  deal: Pick<RoundClaim, 'seed' | 'dealer' | 'terms'>,
): Four<Bag> | null {
  const { terms } = deal;
  if (!hasStep(move.step, terms) || !SEATS.every((seat) => isLegal(move, racks[seat], seat, terms)))
    return null;
  const passes = forFour((seat) => {
    const by = move.by[seat];
    return by && { tiles: move.gave[seat], blind: move.blind[seat], by };
  });
  const again = resolveMove(move.step, passes, deal.dealer, blindDraws(deal, move.step));
  const same = (['gave', 'forwarded', 'received'] as const).every((part) =>
    SEATS.every((seat) => isSame(bagOf(again[part][seat]), move[part][seat])),
  );
  if (!same || again.voided !== move.voided) return null;
  return forFour((seat) => addTo(takeFrom(racks[seat], move.gave[seat])!, move.received[seat]));
}

function isLegal({ step, gave, blind, by }: ResolvedMove, rack: Bag, seat: Seat, terms: Terms): boolean {
  const tiles = gave[seat];
  const partner = neighbor(seat, 'across');
  const isCourtesy = step === 'courtesy-pass';
  if (isCourtesy && (tiles.length > PASS_SIZE || tiles.length !== gave[partner].length)) return false;
  if (by[seat] === null) return isCourtesy && tiles.length === 0 && blind[seat] === 0;
  const count = isCourtesy ? tiles.length : PASS_SIZE;
  return passObjection(rack, { count, blindAllowed: mayPassBlind(step, terms) }, tiles, blind[seat]) === null;
}

function isSame(rack: Bag, tiles: readonly Face[]): boolean {
  return bagOf(tiles).every((count, face) => count === rack[face]);
}
