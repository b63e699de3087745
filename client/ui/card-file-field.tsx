// A card file of the player's own, chosen from this device.
import { useSignal } from '@preact/signals';
import { readJson } from '../../shared-engine/index.ts';
import { CARD_FIELD } from './strings.ts';

interface CardFileFieldProps {
  readonly id: string;
  /** What is said of the file that will be used. */
  readonly chosen: (name: string) => string;
  /** What is played with as long as no file is chosen. */
  readonly otherwise: string;
  /** The parsed file, or null for the house card. Returns why it cannot be used, or null; the server checks it too. */
  readonly onCard: (file: unknown) => string | null;
}

export function CardFileField({ id, chosen, otherwise, onCard }: CardFileFieldProps) {
  const words = useSignal<string | null>(null);

  async function read(input: HTMLInputElement) {
    const file = input.files?.[0];
    onCard(null);
    words.value = null;
    if (!file) return;
    const json = readJson(await file.text());
    words.value = json.ok ? (onCard(json.value) ?? chosen(file.name)) : CARD_FIELD.unreadable(json.message);
  }

  return (
    <div class="field">
      <label for={id}>{CARD_FIELD.label}</label>
      <input
        id={id}
        type="file"
        accept="application/json,.json"
        onChange={(event) => void read(event.currentTarget)}
      />
      <p role="status">{words.value ?? otherwise}</p>
    </div>
  );
}
