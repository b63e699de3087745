// A card compared with one rack: for each pattern the nearest way to make it, with the tiles already held.
import {
  type Bag,
  type CompiledCard,
  FACE_COUNT,
  FACES,
  type Face,
  type Hand,
  JOKER_INDEX,
  likeliestFirst,
  nearestWays,
  type Reach,
} from '../../shared-engine/index.ts';

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
  const nearest = nearestWays(card, rack);
  return card.patterns.flatMap(({ id, section, points, concealed }, index) => {
    const way = nearest[index];
    if (!way) return [];
    return [{ id, section, points, concealed, toGo: way.toGo, tiles: matchTiles(way.hand, rack) }];
  });
}

/** The same hands, those first that a rack reaches most often; `reach` is by pattern. */
export function likeliestMatches(
  { patterns }: Pick<CompiledCard, 'patterns'>,
  matches: readonly CardMatch[],
  reach: readonly Reach[],
): readonly CardMatch[] {
  const byId = new Map(matches.map((match) => [match.id, match]));
  return likeliestFirst(reach).flatMap((pattern) => byId.get(patterns[pattern]?.id ?? '') ?? []);
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

/** Of the tiles that this hand still needs, those known to be out of reach. */
export function goneFrom({ tiles }: CardMatch, gone: readonly Face[]): readonly Face[] {
  const needed = new Set(tiles.filter(({ status }) => status === 'missing').map(({ face }) => face));
  return gone.filter((face) => needed.has(face));
}
