// A card seen from one rack: for each line the hand nearest to it, with the tiles already held lit.
import {
  type Bag,
  type CompiledCard,
  FACE_COUNT,
  FACES,
  type Face,
  JOKER_INDEX,
  type Target,
  tilesToGo,
} from '../../shared-engine/index.ts';

/** `joker` where one of the joker(s) on the rack can stand in. */
export type Light = 'held' | 'joker' | 'missing';

export interface Wanted {
  readonly face: Face;
  readonly light: Light;
}

export interface LineAtHand {
  readonly id: string;
  /** Index into the card's families. */
  readonly family: number;
  readonly points: number;
  readonly concealed: boolean;
  readonly toGo: number;
  /** Fourteen tiles of the nearest hand, equal faces together. */
  readonly tiles: readonly Wanted[];
}

/** Every line of the card in its own order, each as its hand nearest to `rack`. */
export function linesAtHand(card: CompiledCard, rack: Bag): readonly LineAtHand[] {
  const best: { target: Target; toGo: number }[] = [];
  for (const target of card.targets) {
    const toGo = tilesToGo(target, rack);
    const known = best[target.line];
    if (!known || toGo < known.toGo) best[target.line] = { target, toGo };
  }
  return card.lines.flatMap(({ id, family, points, concealed }, index) => {
    const nearest = best[index];
    if (!nearest) return [];
    return [{ id, family, points, concealed, toGo: nearest.toGo, tiles: lit(nearest.target, rack) }];
  });
}

/** Held tiles go to singles and pairs first, because no joker may stand there; jokers fill what is left of groups. */
function lit({ singles, groups }: Target, rack: Bag): Wanted[] {
  let jokers = rack[JOKER_INDEX]!;
  const tiles: Wanted[] = [];
  for (let index = 0; index < FACE_COUNT; index++) {
    if (index === JOKER_INDEX) continue;
    const face = FACES[index]!;
    let held = rack[index]!;
    for (let place = 0; place < singles[index]!; place++) {
      tiles.push({ face, light: held-- > 0 ? 'held' : 'missing' });
    }
    for (let place = 0; place < groups[index]!; place++) {
      if (held-- > 0) tiles.push({ face, light: 'held' });
      else tiles.push({ face, light: jokers-- > 0 ? 'joker' : 'missing' });
    }
  }
  return tiles;
}

/** Nearest first; of equally near lines the one worth more. */
export function nearestFirst(lines: readonly LineAtHand[]): readonly LineAtHand[] {
  return lines.toSorted((a, b) => a.toGo - b.toGo || b.points - a.points);
}
