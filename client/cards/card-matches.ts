// A card seen from one rack: for each line the hand nearest to it, with the tiles already held lit.
import {
  type Bag,
  type CompiledCard,
  FACE_COUNT,
  FACES,
  type Face,
  type Hand,
  JOKER_INDEX,
  tilesToGo,
} from '../../shared-engine/index.ts';

/** `joker` where one of the joker(s) on the rack can stand in. */
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
  /** Fourteen tiles of the nearest hand, equal faces together. */
  readonly tiles: readonly MatchTile[];
}

/** Every line of the card in its own order, each as its hand nearest to `rack`. */
export function cardMatches(card: CompiledCard, rack: Bag): readonly CardMatch[] {
  const best: { target: Hand; toGo: number }[] = [];
  for (const target of card.hands) {
    const toGo = tilesToGo(target, rack);
    const known = best[target.pattern];
    if (!known || toGo < known.toGo) best[target.pattern] = { target, toGo };
  }
  return card.patterns.flatMap(({ id, section, points, concealed }, index) => {
    const nearest = best[index];
    if (!nearest) return [];
    return [{ id, section, points, concealed, toGo: nearest.toGo, tiles: lit(nearest.target, rack) }];
  });
}

/** Held tiles go to singles and pairs first, because no joker may stand there; jokers fill what is left of groups. */
function lit({ singles, groups }: Hand, rack: Bag): MatchTile[] {
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

/** Nearest first; of equally near lines the one worth more. */
export function nearestFirst(lines: readonly CardMatch[]): readonly CardMatch[] {
  return lines.toSorted((a, b) => a.toGo - b.toGo || b.points - a.points);
}
