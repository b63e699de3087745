// How the tables of this player are set up, apart from the card: bots, time, open racks.
import { STYLES } from '../../shared-engine/index.ts';
import { STYLE_WORDS } from '../room/style-names.ts';
import { DEADLINES, type Settings } from '../storage/settings.ts';
import { FRONT, seconds } from './front-strings.ts';

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
        <legend>{FRONT.style}</legend>
        {STYLES.map((style) => (
          <label key={style} class="choice">
            <input
              type="radio"
              name={`${form}-style`}
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
                name={`${form}-deadline`}
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
    </>
  );
}
