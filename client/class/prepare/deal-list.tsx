// The deals of a drill, one of them open at a time: added, put in order, copied, and removed with a way back.
import { useSignal } from '@preact/signals';
import type { Drill, DrillDeal } from '../../../shared-engine/index.ts';
import { randomHex } from '../../connection/random.ts';
import { type ClassCard, DealEditor } from './deal-editor.tsx';
import { copyOf, type DealKind, moved, newDeal, withDeal, withDealAt, withoutDeal } from './draft.ts';
import { DEALS } from './strings.ts';

const KINDS: readonly DealKind[] = ['random', 'manual', 'sampled'];

interface DealListProps {
  readonly drill: Drill;
  readonly card: ClassCard;
  /** Whether nothing was prepared before: then the first deal is open. */
  readonly isNew: boolean;
  readonly onChange: (drill: Drill) => void;
}

interface Removed {
  readonly deal: DrillDeal;
  readonly place: number;
}

export function DealList({ drill, card, isNew, onChange }: DealListProps) {
  const { deals } = drill;
  const openId = useSignal<string | null>(isNew ? (deals[0]?.id ?? null) : null);
  const removed = useSignal<Removed | null>(null);

  function insert(deal: DrillDeal, place: number) {
    openId.value = deal.id;
    onChange(withDealAt(drill, place, deal));
  }

  function remove(deal: DrillDeal, place: number) {
    removed.value = { deal, place };
    onChange(withoutDeal(drill, place));
  }

  return (
    <section class="deals" aria-labelledby="deals-title">
      <h2 id="deals-title">{DEALS.title(deals.length)}</h2>
      <ol class="deal-list">
        {deals.map((deal, place) => (
          <DealEditor
            key={deal.id}
            deal={deal}
            number={place + 1}
            bots={drill.bots}
            ways={drill.ways}
            card={card}
            isOpen={openId.value === deal.id}
            onToggle={() => {
              openId.value = openId.value === deal.id ? null : deal.id;
            }}
            onChange={(next) => onChange(withDeal(drill, place, next))}
            onUp={place === 0 ? null : () => onChange(moved(drill, place, place - 1))}
            onDown={place === deals.length - 1 ? null : () => onChange(moved(drill, place, place + 1))}
            onCopy={() => insert(copyOf(deal, deals), place + 1)}
            onRemove={deals.length === 1 ? null : () => remove(deal, place)}
          />
        ))}
      </ol>
      <div role="status">
        {removed.value && (
          <p class="undo">
            {DEALS.removed(removed.value.place + 1)}{' '}
            <button
              type="button"
              onClick={() => {
                if (removed.value) insert(removed.value.deal, removed.value.place);
                removed.value = null;
              }}
            >
              {DEALS.undo}
            </button>
          </p>
        )}
      </div>
      <div class="row">
        {KINDS.map((kind) => (
          <button
            key={kind}
            type="button"
            onClick={() => insert(newDeal(deals, kind, randomHex(32)), deals.length)}
          >
            {DEALS.add[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}
