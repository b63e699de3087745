// Which card is played with: the house card or one of the cards on this device.
import { lastingStorage } from '../storage/browser-storage.ts';
import { listOwnCards } from '../storage/own-cards.ts';
import { CARD_SELECT } from './strings.ts';

interface CardSelectProps {
  readonly id: string;
  /** Key of a card on this device; null for the house card. */
  readonly value: string | null;
  readonly onChange: (key: string | null) => void;
}

/** Nothing is shown where there is nothing to choose. */
export function CardSelect({ id, value, onChange }: CardSelectProps) {
  const cards = listOwnCards(lastingStorage).filter((card) => !card.archived || card.key === value);
  if (cards.length === 0) return null;
  return (
    <div class="field">
      <label for={id}>{CARD_SELECT.label}</label>
      <select id={id} value={value ?? ''} onChange={(event) => onChange(event.currentTarget.value || null)}>
        <option value="">{CARD_SELECT.house}</option>
        {cards.map(({ key, name, patterns }) => (
          <option key={key} value={key}>
            {CARD_SELECT.own(name, patterns)}
          </option>
        ))}
      </select>
    </div>
  );
}
