// Every tile, large and small, and the states of one tile.

import { FACES } from '../../../shared-engine/index.ts';
import { Tile, TileBack } from '../../tiles/tile.tsx';
import { TileRow } from '../../tiles/tile-row.tsx';
import { Part, State } from './frame.tsx';

const STATES = ['rack-tile', 'rack-tile arrived', 'rack-tile lifted', 'rack-tile dragging'] as const;

export function TilesPart() {
  return (
    <Part name="tiles">
      <State name="large">
        <div class="tile-shelf">
          {FACES.map((face) => (
            <span key={face}>
              <Tile face={face} />
            </span>
          ))}
          <span>
            <TileBack />
          </span>
        </div>
      </State>
      <State name="28 pixels wide">
        <div class="tile-shelf small">
          {FACES.map((face) => (
            <span key={face}>
              <Tile face={face} small />
            </span>
          ))}
        </div>
      </State>
      <State name="on the rack, just arrived, in the tray, being dragged">
        <div class="tile-shelf">
          {STATES.map((look) => (
            <button key={look} type="button" class={look}>
              <Tile face="dot-5" />
            </button>
          ))}
        </div>
      </State>
      <State name="a row with tiles marked, and an empty one">
        <TileRow tiles={['bam-1', 'bam-1', 'crak-9', 'flower', 'joker']} marked={['bam-1', 'flower']} />
        <TileRow tiles={[]} />
      </State>
    </Part>
  );
}
