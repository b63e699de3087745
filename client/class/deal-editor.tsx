// One deal of a drill: by chance, set by hand, or described.
import {
  type CardFile,
  type CompiledCard,
  type Drill,
  type DrillDeal,
  FACES,
} from '../../shared-engine/index.ts';
import { Tile } from '../tiles/tile.tsx';
import { tileName } from '../tiles/tile-names.ts';
import { WishForm } from './constraint-form.tsx';
import { DealLook } from './deal-preview.tsx';
import { asEast, ownRack, withOwnRack, withSeed, withText } from './draft.ts';
import { PREPARE } from './strings.ts';

/** The card of the class: its file, null for the house card, and what a wish may name of it. */
export interface ClassCard {
  readonly file: CardFile | null;
  readonly families: CompiledCard['families'];
}

interface DealEditorProps {
  readonly deal: DrillDeal;
  readonly number: number;
  readonly bots: Drill['bots'];
  readonly card: ClassCard;
  readonly onChange: (deal: DrillDeal) => void;
  /** Null for the only deal. */
  readonly onRemove: (() => void) | null;
}

export function DealEditor({ deal, number, bots, card, onChange, onRemove }: DealEditorProps) {
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
          families={card.families}
          onChange={(wish) =>
            deal.tiles.kind === 'described' && onChange({ ...deal, tiles: { ...deal.tiles, wish } })
          }
        />
      )}
      <DealLook deal={deal} bots={bots} card={card.file} onSeed={(seed) => onChange(withSeed(deal, seed))} />
      <Texts id={id} deal={deal} onChange={onChange} />
      {onRemove && (
        <button type="button" onClick={onRemove}>
          {PREPARE.remove}
        </button>
      )}
    </fieldset>
  );
}

interface TextsProps extends Pick<DealEditorProps, 'deal' | 'onChange'> {
  readonly id: string;
}

/** What goes with the tiles: words for the players, and words for the teacher alone. */
function Texts({ id, deal, onChange }: TextsProps) {
  return (
    <details>
      <summary>{PREPARE.texts}</summary>
      {(['task', 'note'] as const).map((entry) => (
        <div key={entry} class="field">
          <label for={`${id}-${entry}`}>{PREPARE[entry]}</label>
          <textarea
            id={`${id}-${entry}`}
            rows={3}
            maxLength={600}
            value={deal[entry] ?? ''}
            onInput={(event) => onChange(withText(deal, entry, event.currentTarget.value))}
          />
        </div>
      ))}
    </details>
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
