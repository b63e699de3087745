// What one seat knows of the play: its own tiles and what is exposed; built up for that seat, field by field.
import { type Bag, copiesOf, FACES, type Four, JOKER_INDEX, type Seat } from '../../rules/index.ts';
import type { ExposedGroup, Holding, SimulatedPlay } from './play.ts';

export interface PlayerView {
  readonly seat: Seat;
  readonly holding: Holding;
  readonly exposed: Four<readonly ExposedGroup[]>;
  /** Copies of each face that this seat cannot see: in the wall or in another's rack. A tile on offer is seen. */
  readonly live: Bag;
  /** Tiles still to be drawn. */
  readonly wallLeft: number;
}

const COPIES = FACES.map(copiesOf);

export function playerView(play: SimulatedPlay, seat: Seat): PlayerView {
  const { holdings, discards, wall, drawn } = play;
  const holding = holdings[seat];
  const live = COPIES.slice();
  for (let face = 0; face < live.length; face++) live[face]! -= holding.concealed[face]! + discards[face]!;
  const [a, b, c, d] = holdings;
  const exposed: PlayerView['exposed'] = [a.exposed, b.exposed, c.exposed, d.exposed];
  for (const groups of exposed) {
    for (const { face, size, jokers } of groups) {
      live[face]! -= size - jokers;
      live[JOKER_INDEX]! -= jokers;
    }
  }
  if (play.phase === 'offer') live[play.face]!--;
  return { seat, holding, exposed, live, wallLeft: wall.length - drawn };
}
