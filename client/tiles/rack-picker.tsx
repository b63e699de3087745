// A rack whose tiles are tapped to choose some of them; jokers are never passed.
import type { Face } from '../../shared-engine/index.ts';
import './picker.css';
import { Tile } from './tile.tsx';
import { tileName } from './tile-names.ts';

interface RackPickerProps {
  readonly rack: readonly Face[];
  /** Places of the chosen tiles in the rack. */
  readonly chosen: readonly number[];
  readonly onChange: (chosen: readonly number[]) => void;
}

export function RackPicker({ rack, chosen, onChange }: RackPickerProps) {
  const toggle = (place: number) =>
    onChange(chosen.includes(place) ? chosen.filter((one) => one !== place) : [...chosen, place]);
  return (
    <ul class="pick-rack">
      {rack.map((face, place) => (
        <li key={`${place}-${face}`}>
          <button
            type="button"
            aria-label={tileName(face)}
            aria-pressed={chosen.includes(place)}
            aria-disabled={face === 'joker'}
            onClick={() => face !== 'joker' && toggle(place)}
          >
            <Tile face={face} small />
          </button>
        </li>
      ))}
    </ul>
  );
}
