// One deal of a drill: random, with tiles the teacher picks, or fitting a description.
import {
  type CardFile,
  type CompiledCard,
  type Drill,
  type DrillDeal,
  FACES,
} from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileName } from '../../tiles/tile-names.ts';
import { ConstraintForm } from './constraint-form.tsx';
import { DealPreview } from './deal-preview.tsx';
import { asEast, ownRack, withOwnRack, withoutScript, withSeed, withText } from './draft.ts';
import { PICKER, PREPARE } from './strings.ts';

/** The card of the class: its file, null for the house card, and the sections that a constraint may name. */
export interface ClassCard {
  readonly file: CardFile | null;
  readonly sections: CompiledCard['sections'];
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
  const { tiles } = deal;
  return (
    <fieldset class="deal-editor">
      <legend>{PREPARE.deal(number, PREPARE.kinds[tiles.kind])}</legend>
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
      {deal.scripted && (
        <p>
          {PREPARE.scripted}{' '}
          <button type="button" onClick={() => onChange(withoutScript(deal))}>
            {PREPARE.unscripted}
          </button>
        </p>
      )}
      {tiles.kind === 'manual' && <Picker deal={deal} onChange={onChange} />}
      {tiles.kind === 'sampled' && (
        <ConstraintForm
          id={id}
          constraint={tiles.constraint}
          sections={card.sections}
          onChange={(constraint) => onChange({ ...deal, tiles: { ...tiles, constraint } })}
        />
      )}
      <DealPreview
        deal={deal}
        bots={bots}
        card={card.file}
        onSeed={(seed) => onChange(withSeed(deal, seed))}
      />
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
  const remove = (place: number) =>
    onChange(
      withOwnRack(
        deal,
        rack.filter((_, other) => other !== place),
      ),
    );
  return (
    <div class="picker">
      <p>{PICKER.pick}</p>
      <h3>{PICKER.rack(rack.length)}</h3>
      {rack.length === 0 && <p class="aside">{PICKER.nothing}</p>}
      <ul class="picked">
        {rack.map((face, place) => (
          <li key={`${place}-${face}`}>
            <button
              type="button"
              class="tile-button"
              aria-label={PICKER.remove(tileName(face))}
              onClick={() => remove(place)}
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
