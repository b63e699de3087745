// How a new table is set up; sensible without ever being opened.
import { useSignal } from '@preact/signals';
import type { Settings } from '../model/settings.ts';
import { cardChosen, FRONT } from '../words/front.ts';
import { TableTerms } from './table-terms.tsx';

interface TermsFormProps {
  readonly settings: Settings;
  readonly onChange: (part: Partial<Settings>) => void;
  /** The parsed file, or null for the house card; the server judges it. */
  readonly onCard: (file: unknown) => void;
}

export function TermsForm({ settings, onChange, onCard }: TermsFormProps) {
  const cardWords = useSignal<string>(FRONT.cardHouse);

  async function readCard(file: File | undefined) {
    onCard(null);
    cardWords.value = FRONT.cardHouse;
    if (!file) return;
    try {
      onCard(JSON.parse(await file.text()));
      cardWords.value = cardChosen(file.name);
    } catch {
      cardWords.value = FRONT.cardUnreadable;
    }
  }

  return (
    <details class="settings">
      <summary>{FRONT.settings}</summary>
      <TableTerms form="front" settings={settings} onChange={onChange} />
      <div class="field">
        <label for="card">{FRONT.card}</label>
        <input
          id="card"
          type="file"
          accept="application/json,.json"
          onChange={(event) => void readCard(event.currentTarget.files?.[0])}
        />
        <p role="status">{cardWords.value}</p>
      </div>
    </details>
  );
}
