// Two whole rounds that differ in hidden tiles alone: one seat can tell them apart by nothing it may know.
import { SEATS, type Seat, withSeat } from '../../shared-engine/rules/deal/seat.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { addTo, type Bag, countOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import { mixedRound } from './reviews.ts';
import { apply, opened, type Played } from './rounds.ts';

/** The commands of a round, in the order they were given. */
function replayed(start: Played, log: Played['log']): Played {
  return log.reduce((now, event) => {
    switch (event.kind) {
      case 'submitted': {
        const { seat, step, pass } = event;
        return apply(now, { kind: 'pass', seat, step, tiles: pass.tiles, blind: pass.blind, by: pass.by });
      }
      case 'voted':
        return apply(now, { kind: 'vote', step: 'vote', seat: event.seat, go: event.go, by: event.by });
      case 'asked':
        return apply(now, {
          kind: 'ask',
          step: 'courtesy-ask',
          seat: event.seat,
          count: event.count,
          by: event.by,
        });
      default:
        return now;
    }
  }, start);
}

/** A tile that this seat held from first to last and of which it never had to show a copy. */
function keeper(round: Round, start: Bag, seat: Seat, other: Bag): Face | undefined {
  return FACES.find(
    (face) =>
      countOf(start, face) > 0 &&
      countOf(other, face) === 0 &&
      round.resolved.every((step) => step.kind !== 'move' || !step.gave[seat].includes(face)),
  );
}

function exchanged(bag: Bag, gone: Face, came: Face): Bag {
  return addTo(takeFrom(bag, [gone])!, [came]);
}

/**
 * The round `name` as it was played, and once more with two hidden tiles of two other seats exchanged before the
 * first pass, by the same commands. Null where no two seats had a tile that never left them.
 */
export function hiddenPair(name: string, me: Seat): readonly [Round, Round] | null {
  const [one, two] = SEATS.filter((seat) => seat !== me) as [Seat, Seat, Seat];
  const begun = opened(name);
  const { racks } = begun.round;
  const played = mixedRound(name);
  const a = keeper(played.round, racks[one], one, racks[two]);
  const b = keeper(played.round, racks[two], two, racks[one]);
  if (a === undefined || b === undefined) return null;
  const swapped = withSeat(
    withSeat(racks, one, exchanged(racks[one], a, b)),
    two,
    exchanged(racks[two], b, a),
  );
  const again = replayed({ ...begun, round: { ...begun.round, racks: swapped } }, played.log);
  return [played.round, again.round];
}
