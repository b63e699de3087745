// A small table with tiles, so that whoever comes for the first time sees what is played here.
import type { Face } from '../../shared-engine/index.ts';
import { Tile } from '../tiles/tile.tsx';
import '../tiles/tiles.css';

/** Something of everything, and three of a kind to smile at. */
const RACK: readonly Face[] = [
  'bam-1',
  'bam-2',
  'crak-5',
  'dot-8',
  'dot-8',
  'dot-8',
  'red',
  'flower',
  'joker',
];

const PLACES = ['above', 'left', 'right'] as const;

/** Nothing in it is read out or can be tapped: the doors beside it say it all. */
export function TablePicture() {
  return (
    <div class="table-picture" aria-hidden="true">
      <div class="cloth picture-cloth">
        {PLACES.map((place) => (
          <div key={place} class={`drawn-seat at-${place}`}>
            <Backs count={13} />
          </div>
        ))}
        <div class="picture-pass">
          <Backs count={3} out />
        </div>
      </div>
      <div class="picture-rack">
        {RACK.map((face, place) => (
          <span key={place}>
            <Tile face={face} />
          </span>
        ))}
      </div>
    </div>
  );
}

function Backs({ count, out = false }: { readonly count: number; readonly out?: boolean }) {
  return (
    <span class={out ? 'tile-backs out' : 'tile-backs'}>
      {Array.from({ length: count }, (_, place) => (
        <i key={place} />
      ))}
    </span>
  );
}
