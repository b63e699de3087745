// Says it where a deal from a link is played with another card than the link names.
import type { Screen } from '../room/screen.ts';
import { PRACTICE } from './room-strings.ts';
import type { SharedDeal } from './routes/deal-link.ts';

interface DealCardNoteProps {
  readonly shared: SharedDeal;
  readonly screen: Screen;
}

export function DealCardNote({ shared, screen }: DealCardNoteProps) {
  const isOther = 'seated' in screen && screen.seated.table.card.id === 'house';
  if (shared.cardOf === null || !isOther) return null;
  return (
    <p class="notice" role="status">
      {PRACTICE.otherCard}
    </p>
  );
}
