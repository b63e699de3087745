// How the tables of this player are set up, apart from the card: bots and ways to play.
import { STYLES } from '../../shared-engine/index.ts';
import { STYLE_NAMES } from '../room/term-names.ts';
import { WaysForm } from '../room/ways-form.tsx';
import type { Settings } from '../storage/settings.ts';
import { TERMS } from './front-strings.ts';

interface TableTermsProps {
  /** Keeps the groups of two forms on one page apart. */
  readonly form: string;
  readonly settings: Settings;
  readonly onChange: (part: Partial<Settings>) => void;
}

export function TableTerms({ form, settings, onChange }: TableTermsProps) {
  return (
    <>
      <fieldset>
        <legend>{TERMS.style}</legend>
        {STYLES.map((style) => (
          <label key={style} class="choice">
            <input
              type="radio"
              name={`${form}-style`}
              checked={settings.style === style}
              onChange={() => onChange({ style })}
            />
            <span>
              <b>{STYLE_NAMES[style].name}</b> {STYLE_NAMES[style].about}
            </span>
          </label>
        ))}
      </fieldset>
      {(['alone', 'friends'] as const).map((mode) => (
        <WaysForm
          key={mode}
          mode={mode}
          title={TERMS.ways[mode]}
          terms={settings.ways[mode]}
          onChange={(terms) => onChange({ ways: { ...settings.ways, [mode]: terms } })}
        />
      ))}
    </>
  );
}
