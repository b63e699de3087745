// Which card is played with: the house card or one of the cards on this device.
import { lastingStorage } from '../storage/browser-storage.ts';
import { listOwnCards } from '../storage/own-cards.ts';
import { CARD_SELECT } from './strings.ts';

interface CardSelectProps {
  readonly id: string;
  /** Key of a card on this device; null for the house card. */
  readonly value: string | null;
  readonly onChange: (key: string | null) => void;
  /** Name of a card from a file that is used instead of one from the list. */
  readonly brought?: string | null;
}

/** The value of the card from a file; keys have no blank. */
const BROUGHT = 'from a file';

/** Nothing is shown where there is nothing to choose. */
export function CardSelect({ id, value, onChange, brought = null }: CardSelectProps) {
  const cards = listOwnCards(lastingStorage).filter((card) => !card.archived || card.key === value);
  if (cards.length === 0 && brought === null) return null;
  return (
    <div class="field">
      <label for={id}>{CARD_SELECT.label}</label>
      <select
        id={id}
        value={brought === null ? (value ?? '') : BROUGHT}
        onChange={({ currentTarget }) => {
          if (currentTarget.value !== BROUGHT) onChange(currentTarget.value || null);
        }}
      >
        {brought !== null && <option value={BROUGHT}>{CARD_SELECT.brought(brought)}</option>}
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
