// The first screen: where East sits, how the table plays, and the rack as it was dealt.
import { useSignal } from '@preact/signals';
import {
  dealtSize,
  rackProblem,
  SEATS,
  SECOND_CHARLESTON_WAYS,
  sortFaces,
  type Terms,
} from '../../../shared-engine/index.ts';
import { laidProblemWords } from '../../tiles/picker-strings.ts';
import { TilePicker } from '../../tiles/tile-picker.tsx';
import type { OwnTable } from './own-table.ts';
import { OWN_SEAT, OWN_TILES, placeName } from './strings.ts';

interface SetUpProps {
  readonly own: OwnTable;
  readonly onChange: (own: OwnTable) => void;
}

export function SetUp({ own, onChange }: SetUpProps) {
  const { table, tiles } = own;
  const size = dealtSize(OWN_SEAT, table.dealer);
  const problem = rackProblem(tiles, size);
  const said = useSignal(false);
  return (
    <>
      <p>{OWN_TILES.about}</p>
      <fieldset>
        <legend>{OWN_TILES.east}</legend>
        <div class="row">
          {SEATS.map((seat) => (
            <label key={seat} class="choice pill">
              <input
                type="radio"
                name="east"
                checked={table.dealer === seat}
                onChange={() => onChange({ ...own, table: { ...table, dealer: seat } })}
              />
              <span>{seat === OWN_SEAT ? OWN_TILES.eastIsMe : placeName(seat)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <TilePicker
        title={OWN_TILES.rack}
        laid={tiles}
        size={size}
        problemWith={(next) => rackProblem(next, size)}
        onChange={(laid) => onChange({ ...own, tiles: sortFaces(laid) })}
      />
      <Ways terms={table.terms} onChange={(terms) => onChange({ ...own, table: { ...table, terms } })} />
      <button
        type="button"
        class="primary confirm"
        aria-disabled={problem !== null}
        onClick={() => {
          said.value = problem !== null;
          if (problem === null) onChange({ ...own, begun: true, entries: [], helped: [] });
        }}
      >
        {OWN_TILES.begin}
      </button>
      <p role="alert">{said.value && problem && laidProblemWords(problem)}</p>
    </>
  );
}

interface WaysProps {
  readonly terms: Terms;
  readonly onChange: (terms: Terms) => void;
}

function Ways({ terms, onChange }: WaysProps) {
  return (
    <details class="panel">
      <summary>{OWN_TILES.ways}</summary>
      <fieldset>
        <legend>{OWN_TILES.second}</legend>
        <div class="row">
          {SECOND_CHARLESTON_WAYS.map((way) => (
            <label key={way} class="choice">
              <input
                type="radio"
                name="second"
                checked={terms.secondCharleston === way}
                onChange={() => onChange({ ...terms, secondCharleston: way })}
              />
              <span>{OWN_TILES.secondWays[way]}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <label class="choice">
        <input
          type="checkbox"
          checked={terms.blindPasses}
          onChange={(event) => onChange({ ...terms, blindPasses: event.currentTarget.checked })}
        />
        <span>{OWN_TILES.blind}</span>
      </label>
      <label class="choice">
        <input
          type="checkbox"
          checked={terms.courtesy === 'by-asking'}
          onChange={(event) =>
            onChange({ ...terms, courtesy: event.currentTarget.checked ? 'by-asking' : 'none' })
          }
        />
        <span>{OWN_TILES.courtesy}</span>
      </label>
    </details>
  );
}
