// One deal of a drill: by chance, set by hand, or described.
import { type DrillDeal, FACES, houseCard, type Wish } from '../../shared-engine/index.ts';
import { Tile } from '../tiles/tile.tsx';
import { tileName } from '../words/tiles.ts';
import {
  type AmountEntry,
  asEast,
  type Bound,
  boundOf,
  ownRack,
  withAmount,
  withOwnRack,
  withText,
} from './draft.ts';
import { PREPARE, WISHES } from './words.ts';

interface DealEditorProps {
  readonly deal: DrillDeal;
  readonly number: number;
  readonly onChange: (deal: DrillDeal) => void;
  /** Null for the only deal. */
  readonly onRemove: (() => void) | null;
}

export function DealEditor({ deal, number, onChange, onRemove }: DealEditorProps) {
  const id = `deal-${number}`;
  return (
    <fieldset class="deal-editor">
      <legend>
        {PREPARE.deal} {number}: {PREPARE[deal.tiles.kind].toLowerCase()}
      </legend>
      <div class="field">
        <label for={`${id}-title`}>{PREPARE.dealTitle}</label>
        <input
          id={`${id}-title`}
          maxLength={80}
          value={deal.title ?? ''}
          onInput={(event) => onChange(withText(deal, 'title', event.currentTarget.value))}
        />
      </div>
      <label class="choice">
        <input
          type="checkbox"
          checked={deal.dealer === deal.seat}
          onChange={(event) => onChange(asEast(deal, event.currentTarget.checked))}
        />
        {PREPARE.dealer}
      </label>
      {deal.tiles.kind === 'composed' && <Picker deal={deal} onChange={onChange} />}
      {deal.tiles.kind === 'described' && (
        <WishForm
          id={id}
          wish={deal.tiles.wish}
          onChange={(wish) =>
            deal.tiles.kind === 'described' && onChange({ ...deal, tiles: { ...deal.tiles, wish } })
          }
        />
      )}
      {onRemove && (
        <button type="button" onClick={onRemove}>
          {PREPARE.remove}
        </button>
      )}
    </fieldset>
  );
}

function Picker({ deal, onChange }: Pick<DealEditorProps, 'deal' | 'onChange'>) {
  const rack = ownRack(deal);
  return (
    <div class="picker">
      <p>{PREPARE.pick}</p>
      <h3>
        {PREPARE.rack} ({rack.length})
      </h3>
      {rack.length === 0 && <p class="aside">{PREPARE.nothing}</p>}
      <ul class="picked">
        {rack.map((face, place) => (
          <li key={`${place}-${face}`}>
            <button
              type="button"
              class="tile-button"
              aria-label={PREPARE.takeOut(tileName(face))}
              onClick={() =>
                onChange(
                  withOwnRack(
                    deal,
                    rack.filter((_, other) => other !== place),
                  ),
                )
              }
            >
              <Tile face={face} small />
            </button>
          </li>
        ))}
      </ul>
      <ul class="pool">
        {FACES.map((face) => (
          <li key={face}>
            <button
              type="button"
              class="tile-button"
              aria-label={tileName(face)}
              onClick={() => onChange(withOwnRack(deal, [...rack, face]))}
            >
              <Tile face={face} small />
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

const ENTRIES = Object.keys(WISHES) as readonly AmountEntry[];
const BOUNDS: readonly (readonly [Bound, string])[] = [
  ['any', PREPARE.any],
  ['exactly', PREPARE.exactly],
  ['at-least', PREPARE.atLeast],
  ['at-most', PREPARE.atMost],
];

interface WishFormProps {
  readonly id: string;
  readonly wish: Wish;
  readonly onChange: (wish: Wish) => void;
}

function WishForm({ id, wish, onChange }: WishFormProps) {
  const { family, ...amounts } = wish;
  return (
    <div class="wish">
      <p>{PREPARE.wish}</p>
      {ENTRIES.map((entry) => {
        const { bound, count } = boundOf(wish[entry]);
        return (
          <div key={entry} class="wish-row">
            <label for={`${id}-${entry}`}>{WISHES[entry]}</label>
            <select
              id={`${id}-${entry}`}
              value={bound}
              onChange={(event) => {
                const next = BOUNDS.find(([name]) => name === event.currentTarget.value);
                if (next) onChange(withAmount(wish, entry, next[0], count));
              }}
            >
              {BOUNDS.map(([name, words]) => (
                <option key={name} value={name}>
                  {words}
                </option>
              ))}
            </select>
            {bound !== 'any' && (
              <input
                type="number"
                min={0}
                max={14}
                aria-label={`${WISHES[entry]}: ${BOUNDS.find(([name]) => name === bound)?.[1]}`}
                value={count}
                onChange={(event) =>
                  onChange(withAmount(wish, entry, bound, Math.trunc(Number(event.currentTarget.value))))
                }
              />
            )}
          </div>
        );
      })}
      <div class="wish-row">
        <label for={`${id}-family`}>{PREPARE.family}</label>
        <select
          id={`${id}-family`}
          value={family ?? ''}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            onChange(chosen === '' ? amounts : { ...amounts, family: chosen });
          }}
        >
          <option value="">{PREPARE.any}</option>
          {houseCard().families.map(({ id: name, name: words }) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}
