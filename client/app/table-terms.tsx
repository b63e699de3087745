// How the tables of this player are set up, apart from the card: bots, time, open racks.
import { STYLES } from '../../shared-engine/index.ts';
import { duration, STYLE_NAMES } from '../room/term-names.ts';
import { DEADLINES, type Settings } from '../storage/settings.ts';
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
      <fieldset>
        <legend>{TERMS.deadline}</legend>
        <div class="row">
          {DEADLINES.map((deadline) => (
            <label key={deadline} class="choice">
              <input
                type="radio"
                name={`${form}-deadline`}
                checked={settings.deadline === deadline}
                onChange={() => onChange({ deadline })}
              />
              <span>{deadline === null ? TERMS.deadlineOff : duration(deadline)}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <label class="choice">
        <input
          type="checkbox"
          checked={settings.revealRacks}
          onChange={(event) => onChange({ revealRacks: event.currentTarget.checked })}
        />
        <span>
          <b>{TERMS.revealRacks}</b> {TERMS.revealRacksAbout}
        </span>
      </label>
    </>
  );
}
