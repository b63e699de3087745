// How a class sits and what it is told, as the teacher sets it.
import {
  type ClassTerms,
  DRILL_FORMS,
  type Drill,
  STYLES,
  type StyleName,
} from '../../shared-engine/index.ts';
import { seconds } from '../app/front-strings.ts';
import { STYLE_WORDS } from '../room/style-names.ts';
import { PREPARE } from './strings.ts';

const DEADLINES = [null, 30, 60, 120, 300] as const;

export function Sitting({
  drill,
  onChange,
}: {
  readonly drill: Drill;
  readonly onChange: (drill: Drill) => void;
}) {
  const style = drill.bots.styles[0];
  return (
    <section class="sitting">
      <fieldset>
        <legend>{PREPARE.form}</legend>
        {DRILL_FORMS.map((form) => (
          <label key={form} class="choice">
            <input
              type="radio"
              name="form"
              checked={drill.form === form}
              onChange={() => onChange({ ...drill, form })}
            />
            <span>
              <b>{PREPARE.forms[form].name}</b> {PREPARE.forms[form].about}
            </span>
          </label>
        ))}
      </fieldset>
      <div class="field">
        <label for="bot-style">{PREPARE.bots}</label>
        <select
          id="bot-style"
          value={style}
          onChange={(event) => {
            const next: StyleName | undefined = STYLES.find((one) => one === event.currentTarget.value);
            if (next) onChange({ ...drill, bots: { ...drill.bots, styles: [next, next, next] } });
          }}
        >
          {STYLES.map((one) => (
            <option key={one} value={one}>
              {STYLE_WORDS[one].name}
            </option>
          ))}
        </select>
      </div>
    </section>
  );
}

interface TermsProps {
  readonly terms: ClassTerms;
  readonly onChange: (terms: ClassTerms) => void;
}

export function Terms({ terms, onChange }: TermsProps) {
  return (
    <section class="sitting">
      <div class="field">
        <label for="class-deadline">{PREPARE.deadline}</label>
        <select
          id="class-deadline"
          value={String(terms.deadline)}
          onChange={(event) => {
            const chosen = DEADLINES.find((one) => String(one) === event.currentTarget.value);
            if (chosen !== undefined) onChange({ ...terms, deadline: chosen });
          }}
        >
          {DEADLINES.map((one) => (
            <option key={String(one)} value={String(one)}>
              {one === null ? PREPARE.noDeadline : seconds(one)}
            </option>
          ))}
        </select>
      </div>
      {(['racks', 'names', 'cardClosed'] as const).map((entry) => (
        <label key={entry} class="choice">
          <input
            type="checkbox"
            checked={terms[entry]}
            onChange={(event) => onChange({ ...terms, [entry]: event.currentTarget.checked })}
          />
          {PREPARE[entry]}
        </label>
      ))}
      <p class="aside">{PREPARE.told}</p>
    </section>
  );
}
