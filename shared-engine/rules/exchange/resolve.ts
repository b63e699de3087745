// Turns the four submitted passes of a step into one movement of tiles, blind passes included (rules C1, B1–B4).
import { laterSeed } from '../deal/commitment.ts';
import type { Deal } from '../deal/deal.ts';
import { drawn, type Random, stream } from '../deal/random.ts';
import { forFour, giverTo, neighbor, SEATS, type Seat } from '../deal/seat.ts';
import { sortFaces } from '../tiles/bag.ts';
import type { Face, Four } from '../tiles/face.ts';
import type { ResolvedMove, SubmittedPass } from './round.ts';
import { MOVES, type MoveStep } from './schedule.ts';

/** A tile that is being passed; an object, so that two tiles of one face stay two tiles. */
interface MovingTile {
  readonly face: Face;
}

/**
 * Resolves one move. `passes[seat]` is null only where a courtesy pair agreed on no tiles.
 *
 * Each seat sends its own tiles and passes on `blind` of those that arrive. Where some seat passes three tiles
 * of its own, the loop starts behind that seat, so each draw is made from a complete arriving bundle. Where all
 * four pass blind there is no such seat (rule B4): only as many slots are filled as there are tiles, the other
 * slots are void for every seat, and the loop goes from the dealer to the right until every seat has passed on
 * its number. It ends: a seat that finds nothing to draw has a bundle no larger than the one before it, so all
 * four would lack the same number of tiles, and that number was voided beforehand.
 */
export function resolveMove(
  step: MoveStep,
  passes: Four<SubmittedPass | null>,
  dealer: Seat,
  random: Random,
): ResolvedMove {
  const { toward } = MOVES[step];
  // In rack order, so that the draws follow from what was passed and not from the order in which it was picked.
  const own = forFour((seat) => sortFaces(passes[seat]?.tiles ?? []).map((face): MovingTile => ({ face })));
  const blind = forFour((seat) => passes[seat]?.blind ?? 0);

  const allBlind = blind.every((count) => count > 0);
  const realTiles = own.reduce((sum, tiles) => sum + tiles.length, 0);
  const voided = allBlind ? Math.max(0, 3 - realTiles) : 0;

  const passedOn: Four<MovingTile[]> = [[], [], [], []];
  const bundle = (seat: Seat): MovingTile[] => [...own[seat], ...passedOn[seat]];
  const owed = (seat: Seat): number => blind[seat] - voided - passedOn[seat].length;
  const order = allBlind ? seatsFrom(dealer, 'right') : seatsFrom(SEATS.find((s) => blind[s] === 0)!, toward);

  while (SEATS.some((seat) => owed(seat) > 0)) {
    for (const seat of order) {
      const ownBundle = bundle(seat);
      const arriving = bundle(giverTo(seat, toward)).filter((tile) => !ownBundle.includes(tile));
      passedOn[seat].push(...drawn(arriving, Math.min(owed(seat), arriving.length), random));
    }
  }

  const received = forFour((seat) =>
    bundle(giverTo(seat, toward)).filter((tile) => !passedOn[seat].includes(tile)),
  );
  return {
    kind: 'move',
    step,
    gave: facesBySeat(own),
    forwarded: facesBySeat(passedOn),
    received: facesBySeat(received),
    blind,
    voided,
    by: forFour((seat) => passes[seat]?.by ?? null),
  };
}

/**
 * Where the draws of a step come from: a stream of its own, so that earlier steps cannot change them. It is made only
 * when something is drawn, because few steps draw at all.
 */
export function blindDraws(deal: Pick<Deal, 'seed'>, step: MoveStep): Random {
  let random: Random | null = null;
  return {
    below(bound) {
      random ??= stream(laterSeed(deal), `blind/${step}`);
      return random.below(bound);
    },
  };
}

function seatsFrom(start: Seat, direction: 'right' | 'left' | 'across'): readonly Seat[] {
  const order: Seat[] = [start];
  while (order.length < 4) order.push(neighbor(order.at(-1)!, direction));
  return order;
}

function facesBySeat(tiles: Four<readonly MovingTile[]>): Four<readonly Face[]> {
  return forFour((seat) => sortFaces(tiles[seat].map((tile) => tile.face)));
}
