// How a new table is set up; sensible without ever being opened.
import type { Settings } from '../storage/settings.ts';
import { CardFileField } from '../ui/card-file-field.tsx';
import { CardSelect } from '../ui/card-select.tsx';
import { CARD_FIELD } from '../ui/strings.ts';
import { FRONT } from './front-strings.ts';
import { TableTerms } from './table-terms.tsx';

interface TermsFormProps {
  readonly settings: Settings;
  readonly onChange: (part: Partial<Settings>) => void;
  /** The parsed file, or null for the house card; the server checks it. */
  readonly onCard: (file: unknown) => void;
}

export function TermsForm({ settings, onChange, onCard }: TermsFormProps) {
  return (
    <details class="settings">
      <summary>{FRONT.settings}</summary>
      <TableTerms form="front" settings={settings} onChange={onChange} />
      <CardSelect id="own-card" value={settings.card} onChange={(card) => onChange({ card })} />
      <CardFileField
        id="card"
        chosen={FRONT.cardChosen}
        otherwise={settings.card === null ? CARD_FIELD.house : CARD_FIELD.own}
        onCard={(file) => {
          onCard(file);
          return null;
        }}
      />
    </details>
  );
}
