// One deal of a drill: closed, its title and its rack; open, everything that can be set about it.
import {
  type CardFile,
  type CompiledCard,
  DRILL_LIMITS,
  type Drill,
  type DrillDeal,
  dealtSize,
  plainRack,
  rackProblem,
  sortFaces,
} from '../../../shared-engine/index.ts';
import { TilePicker } from '../../tiles/tile-picker.tsx';
import { TileRow } from '../../tiles/tile-row.tsx';
import { FullNote } from '../../ui/full-note.tsx';
import { CommentsForm } from './comments-form.tsx';
import { ConstraintForm } from './constraint-form.tsx';
import { constraintWords } from './constraint-words.ts';
import { DealPreview } from './deal-preview.tsx';
import { asEast, ownRack, withOwnRack, withoutScript, withSeed, withText } from './draft.ts';
import { DEALS, dealName, PICKER } from './strings.ts';

/** The card of the class: its file, null for the house card, and the sections that a constraint may name. */
export interface ClassCard {
  readonly file: CardFile | null;
  readonly sections: CompiledCard['sections'];
}

interface DealEditorProps {
  readonly deal: DrillDeal;
  readonly number: number;
  readonly bots: Drill['bots'];
  readonly ways: Drill['ways'];
  readonly card: ClassCard;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
  readonly onChange: (deal: DrillDeal) => void;
  /** Null where it cannot be moved that way. */
  readonly onUp: (() => void) | null;
  readonly onDown: (() => void) | null;
  readonly onCopy: () => void;
  /** Null for the only deal. */
  readonly onRemove: (() => void) | null;
}

export function DealEditor(props: DealEditorProps) {
  const { deal, number, bots, card, isOpen, onToggle, onUp, onDown } = props;
  const rack = plainRack({ bots }, deal);
  return (
    <li class="deal-editor">
      <div class="deal-head">
        <h3>
          <button type="button" aria-expanded={isOpen} onClick={onToggle}>
            {dealName(number, deal)}
          </button>
        </h3>
        <div class="row deal-order">
          <button
            type="button"
            aria-label={DEALS.up(number)}
            aria-disabled={onUp === null}
            onClick={() => onUp?.()}
          >
            ↑
          </button>
          <button
            type="button"
            aria-label={DEALS.down(number)}
            aria-disabled={onDown === null}
            onClick={() => onDown?.()}
          >
            ↓
          </button>
        </div>
        <p class="deal-rack">
          {rack && <TileRow tiles={rack} />}
          {deal.tiles.kind === 'sampled' && constraintWords(deal.tiles.constraint, card.sections)}
        </p>
      </div>
      {isOpen && <DealBody {...props} />}
    </li>
  );
}

function DealBody({ deal, number, bots, ways, card, onChange, onCopy, onRemove }: DealEditorProps) {
  const id = `deal-${number}`;
  const { tiles } = deal;
  return (
    <div class="deal-body">
      <div class="field">
        <label for={`${id}-title`}>{DEALS.dealTitle}</label>
        <input
          id={`${id}-title`}
          maxLength={DRILL_LIMITS.title}
          value={deal.title ?? ''}
          onInput={(event) => onChange(withText(deal, 'title', event.currentTarget.value))}
        />
        <FullNote text={deal.title ?? ''} most={DRILL_LIMITS.title} />
      </div>
      <label class="choice">
        <input
          type="checkbox"
          checked={deal.dealer === deal.seat}
          onChange={(event) => onChange(asEast(deal, event.currentTarget.checked))}
        />
        {DEALS.dealer}
      </label>
      {deal.scripted && (
        <p>
          {DEALS.scripted}{' '}
          <button type="button" onClick={() => onChange(withoutScript(deal))}>
            {DEALS.unscripted}
          </button>
        </p>
      )}
      {tiles.kind === 'manual' && <RackPicker deal={deal} onChange={onChange} />}
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
      <CommentsForm id={id} deal={deal} bots={bots} ways={ways} card={card.file} onChange={onChange} />
      <div class="row">
        <button type="button" onClick={onCopy}>
          {DEALS.copy}
        </button>
        {onRemove && (
          <button type="button" onClick={onRemove}>
            {DEALS.remove}
          </button>
        )}
      </div>
    </div>
  );
}

type EditProps = Pick<DealEditorProps, 'deal' | 'onChange'>;

/** The rack stays sorted while it is picked; what is left of it is dealt at random. */
function RackPicker({ deal, onChange }: EditProps) {
  const size = dealtSize(deal.seat, deal.dealer);
  return (
    <>
      <p>{PICKER.pick}</p>
      <TilePicker
        title={PICKER.rack}
        laid={ownRack(deal)}
        size={size}
        problemWith={(next) => rackProblem(next, size)}
        onChange={(laid) => onChange(withOwnRack(deal, sortFaces(laid)))}
      />
    </>
  );
}

interface TextsProps extends EditProps {
  readonly id: string;
}

function Texts({ id, deal, onChange }: TextsProps) {
  return (
    <details>
      <summary>{DEALS.texts}</summary>
      {(['task', 'note'] as const).map((entry) => (
        <div key={entry} class="field">
          <label for={`${id}-${entry}`}>{DEALS[entry]}</label>
          <textarea
            id={`${id}-${entry}`}
            rows={3}
            maxLength={DRILL_LIMITS.note}
            value={deal[entry] ?? ''}
            onInput={(event) => onChange(withText(deal, entry, event.currentTarget.value))}
          />
          <FullNote text={deal[entry] ?? ''} most={DRILL_LIMITS.note} />
        </div>
      ))}
    </details>
  );
}
