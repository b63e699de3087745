// Saves a drill that this device stores as a file; a card that it carries is asked about once.
import { useSignal } from '@preact/signals';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { listOwnCards, markMayShare } from '../../storage/own-cards.ts';
import { storedDrill } from '../model/library.ts';
import { SaveDrillButton } from './save-drill-button.tsx';

interface SaveStoredDrillProps {
  readonly words: string;
  /** The drill file. */
  readonly text: string;
  /** Key of the card on this device that it is played on. */
  readonly ownCard: string | null;
}

export function SaveStoredDrill({ words, text, ownCard }: SaveStoredDrillProps) {
  const file = storedDrill(text);
  const said = useSignal(
    listOwnCards(lastingStorage).some(({ key, mayShare }) => key === ownCard && mayShare),
  );
  const carried = file.card === undefined || file.card === 'house' ? null : file.card.name;
  return (
    <SaveDrillButton
      words={words}
      file={() => file}
      asksAbout={said.value ? null : carried}
      onMayShare={() => {
        said.value = true;
        if (ownCard !== null) markMayShare(lastingStorage, ownCard);
      }}
    />
  );
}
