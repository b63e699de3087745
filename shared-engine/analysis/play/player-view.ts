// What one seat knows of the play: its own tiles and what lies open; built up for that seat, never stripped.
import type { Seat } from '../../rules/deal/seat.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { copiesOf, FACES, type Four, JOKER_INDEX } from '../../rules/tiles/face.ts';
import type { ExposedGroup, Hand, Play } from './play.ts';

export interface Sight {
  readonly seat: Seat;
  readonly hand: Hand;
  readonly exposed: Four<readonly ExposedGroup[]>;
  /** Copies of each face that this seat cannot see: in the wall or in another's rack. A tile on offer is seen. */
  readonly live: Bag;
  /** Tiles still to be drawn. */
  readonly wallLeft: number;
}

const COPIES = FACES.map(copiesOf);

export function sightOf(play: Play, seat: Seat): Sight {
  const { hands, discards, wall, drawn } = play;
  const hand = hands[seat];
  const live = COPIES.slice();
  for (let face = 0; face < live.length; face++) live[face]! -= hand.concealed[face]! + discards[face]!;
  const exposed: Sight['exposed'] = [hands[0].exposed, hands[1].exposed, hands[2].exposed, hands[3].exposed];
  for (const groups of exposed) {
    for (const { face, size, jokers } of groups) {
      live[face]! -= size - jokers;
      live[JOKER_INDEX]! -= jokers;
    }
  }
  if (play.phase === 'offer') live[play.face]!--;
  return { seat, hand, exposed, live, wallLeft: wall.length - drawn };
}
