// Where the teacher picks a pass from the rack that everybody holds.
import type { Signal } from '@preact/signals';
import { type Face, PASS_SIZE } from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileName } from '../../tiles/tile-names.ts';
import { GUIDED } from './guided-strings.ts';

export interface OwnPass {
  /** Places on the rack of the tiles picked, in the order they were tapped. */
  readonly places: readonly number[];
  /** How many arriving tiles go on blind. */
  readonly blind: number;
}

interface PassPickerProps {
  readonly rack: readonly Face[];
  readonly pass: Signal<OwnPass>;
  readonly withBlind: boolean;
}

const BLIND_COUNTS = Array.from({ length: PASS_SIZE + 1 }, (_, count) => count);

export function PassPicker({ rack, pass, withBlind }: PassPickerProps) {
  const { places, blind } = pass.value;
  const toggle = (place: number) => {
    const others = places.filter((other) => other !== place);
    pass.value = { blind, places: others.length < places.length ? others : [...places, place] };
  };
  return (
    <>
      <div class="picker">
        <p>{GUIDED.pick}</p>
        <ul class="pool">
          {rack.map((face, place) => (
            <li key={`${place}-${face}`}>
              <button
                type="button"
                class="tile-button"
                aria-label={tileName(face)}
                aria-pressed={places.includes(place)}
                disabled={face === 'joker'}
                onClick={() => toggle(place)}
              >
                <Tile face={face} small />
              </button>
            </li>
          ))}
        </ul>
      </div>
      {withBlind && (
        <div class="field">
          <label for="guided-blind">{GUIDED.blind}</label>
          <select
            id="guided-blind"
            value={blind}
            onChange={(event) => {
              pass.value = { places, blind: Number(event.currentTarget.value) };
            }}
          >
            {BLIND_COUNTS.map((count) => (
              <option key={count} value={count}>
                {count}
              </option>
            ))}
          </select>
        </div>
      )}
    </>
  );
}
