// How a new table is set up; sensible without ever being opened.
import { useSignal } from '@preact/signals';
import { STYLES } from '../../shared-engine/index.ts';
import { DEADLINES, type Settings } from '../model/settings.ts';
import { cardChosen, FRONT, seconds } from '../words/front.ts';
import { STYLE_WORDS } from '../words/people.ts';

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
      <fieldset>
        <legend>{FRONT.style}</legend>
        {STYLES.map((style) => (
          <label key={style} class="choice">
            <input
              type="radio"
              name="style"
              checked={settings.style === style}
              onChange={() => onChange({ style })}
            />
            <span>
              <b>{STYLE_WORDS[style].name}</b> {STYLE_WORDS[style].about}
            </span>
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>{FRONT.deadline}</legend>
        <div class="row">
          {DEADLINES.map((deadline) => (
            <label key={deadline} class="choice">
              <input
                type="radio"
                name="deadline"
                checked={settings.deadline === deadline}
                onChange={() => onChange({ deadline })}
              />
              <span>{deadline === null ? FRONT.deadlineOff : seconds(deadline)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <label class="choice">
        <input
          type="checkbox"
          checked={settings.layOpen}
          onChange={(event) => onChange({ layOpen: event.currentTarget.checked })}
        />
        <span>
          <b>{FRONT.layOpen}</b> {FRONT.layOpenAbout}
        </span>
      </label>
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
