// The whole set as buttons, one row a suit, and what has been laid from it.
import { type Bag, bagOf, copiesLeft, countOf, FACES, type Face } from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileName } from '../../tiles/tile-names.ts';
import { laidOf, OWN_TILES, pickName } from './strings.ts';

interface TilePickerProps {
  /** What the laid tiles are called. */
  readonly title: string;
  readonly laid: readonly Face[];
  /** How many tiles are to be laid. */
  readonly size: number;
  /** Tiles that lie elsewhere already, so that fewer of them are left. */
  readonly beside?: Bag;
  /** Jokers are never passed, so that none can arrive. */
  readonly withJokers: boolean;
  readonly onChange: (laid: readonly Face[]) => void;
}

export function TilePicker({ title, laid, size, beside, withJokers, onChange }: TilePickerProps) {
  const taken = bagOf(laid).map((count, face) => count + (beside?.[face] ?? 0));
  const left = copiesLeft(taken);
  const isFull = laid.length >= size;
  return (
    <div class="tile-picker">
      <section aria-label={title}>
        <p class="picker-head">
          <b>{title}</b> <span role="status">{laidOf(laid.length, size)}</span>
        </p>
        <ul class="pick-rack laid-tiles">
          {laid.map((face, place) => (
            <li key={`${place}-${face}`}>
              <button
                type="button"
                aria-label={tileName(face)}
                onClick={() => onChange(laid.filter((_, other) => other !== place))}
              >
                <Tile face={face} small />
              </button>
            </li>
          ))}
        </ul>
      </section>
      <p class="aside">{OWN_TILES.rackTap}</p>
      <ul class="tile-set" aria-label={OWN_TILES.set}>
        {FACES.map((face) => {
          const copies = face === 'joker' && !withJokers ? 0 : countOf(left, face);
          const isOff = isFull || copies === 0;
          return (
            <li key={face}>
              <button
                type="button"
                class="set-tile"
                aria-label={pickName(tileName(face), copies)}
                aria-disabled={isOff}
                onClick={() => {
                  if (!isOff) onChange([...laid, face]);
                }}
              >
                <Tile face={face} small />
                <span class="copies" aria-hidden="true">
                  {copies}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
