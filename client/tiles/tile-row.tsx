// A row of small tiles with its spoken list.
import type { Face } from '../../shared-engine/index.ts';
import { Tile } from './tile.tsx';
import { tileList } from './tile-names.ts';

interface TileRowProps {
  readonly tiles: readonly Face[];
  /** How many of each face stand out, as `marked` has them. */
  readonly marked?: readonly Face[];
}

export function TileRow({ tiles, marked = [] }: TileRowProps) {
  const left = [...marked];
  return (
    <span class="tile-row">
      <span class="spoken">{tileList(tiles)}</span>
      {tiles.map((face, index) => {
        const at = left.indexOf(face);
        if (at >= 0) left.splice(at, 1);
        return (
          <span key={`${index}-${face}`} class={at >= 0 ? 'small-tile marked' : 'small-tile'}>
            <Tile face={face} small />
          </span>
        );
      })}
    </span>
  );
}
