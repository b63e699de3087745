// A card compared with one rack: for each pattern the nearest way to make it, with the tiles already held.
import {
  type Bag,
  type CompiledCard,
  FACE_COUNT,
  FACES,
  type Face,
  type Hand,
  JOKER_INDEX,
  type SeatStep,
  tilesToGo,
} from '../../shared-engine/index.ts';
import type { Reach } from '../workers/reach.ts';

/** `joker` where a joker on the rack can stand in. */
export type TileStatus = 'held' | 'joker' | 'missing';

export interface MatchTile {
  readonly face: Face;
  readonly status: TileStatus;
}

export interface CardMatch {
  readonly id: string;
  /** Index into the card's sections. */
  readonly section: number;
  readonly points: number;
  readonly concealed: boolean;
  readonly toGo: number;
  /** The fourteen tiles of the nearest hand, equal faces together. */
  readonly tiles: readonly MatchTile[];
}

/** Every pattern of the card in its own order, each with the way to make it that is nearest to `rack`. */
export function cardMatches(card: CompiledCard, rack: Bag): readonly CardMatch[] {
  const best: { hand: Hand; toGo: number }[] = [];
  for (const hand of card.hands) {
    const toGo = tilesToGo(hand, rack);
    const known = best[hand.pattern];
    if (!known || toGo < known.toGo) best[hand.pattern] = { hand, toGo };
  }
  return card.patterns.flatMap(({ id, section, points, concealed }, index) => {
    const nearest = best[index];
    if (!nearest) return [];
    return [{ id, section, points, concealed, toGo: nearest.toGo, tiles: matchTiles(nearest.hand, rack) }];
  });
}

/** Held tiles go to singles and pairs first, because no joker may stand there; jokers fill what is left of groups. */
function matchTiles({ singles, groups }: Hand, rack: Bag): MatchTile[] {
  let jokers = rack[JOKER_INDEX]!;
  const tiles: MatchTile[] = [];
  for (let index = 0; index < FACE_COUNT; index++) {
    if (index === JOKER_INDEX) continue;
    const face = FACES[index]!;
    let held = rack[index]!;
    for (let place = 0; place < singles[index]!; place++) {
      tiles.push({ face, status: held-- > 0 ? 'held' : 'missing' });
    }
    for (let place = 0; place < groups[index]!; place++) {
      if (held-- > 0) tiles.push({ face, status: 'held' });
      else tiles.push({ face, status: jokers-- > 0 ? 'joker' : 'missing' });
    }
  }
  return tiles;
}

/** What is reached most often first; of patterns that never are, the one that comes nearest. */
export function likeliestFirst(matches: readonly CardMatch[], reach: readonly Reach[]): readonly CardMatch[] {
  const order = [...matches.keys()].sort((a, b) => {
    const [one, other] = [reach[a]!, reach[b]!];
    return other.rate - one.rate || one.left - other.left;
  });
  return order.map((place) => matches[place]!);
}

/** Of the tiles that this hand still needs, those known to be out of reach. */
export function goneFrom({ tiles }: CardMatch, gone: readonly Face[]): readonly Face[] {
  const needed = new Set(tiles.filter(({ status }) => status === 'missing').map(({ face }) => face));
  return gone.filter((face) => needed.has(face));
}

/** What this seat has passed on and not got back. */
export function tilesGone(steps: readonly SeatStep[]): readonly Face[] {
  const gone: Face[] = [];
  for (const step of steps) {
    if (step.kind !== 'move') continue;
    gone.push(...step.gave);
    for (const face of step.received) {
      const at = gone.indexOf(face);
      if (at >= 0) gone.splice(at, 1);
    }
  }
  return gone;
}
