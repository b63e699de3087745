// How a class plays and what its players are told, as the teacher sets it.
import {
  type ClassTerms,
  DRILL_FORMS,
  type Drill,
  drillTerms,
  isAnonymous,
  STYLES,
  type StyleName,
} from '../../../shared-engine/index.ts';
import { STYLE_NAMES } from '../../room/term-names.ts';
import { duration } from '../../room/ways.ts';
import { WaysForm } from '../../room/ways-form.tsx';
import { DEADLINES } from '../../storage/ways.ts';
import { withWays } from './draft.ts';
import { anonymitySentences, CLASS_FORM } from './strings.ts';

interface FormFieldsProps {
  readonly drill: Drill;
  readonly onChange: (drill: Drill) => void;
}

export function FormFields({ drill, onChange }: FormFieldsProps) {
  const style = drill.bots.styles[0];
  return (
    <section class="class-form">
      <fieldset>
        <legend>{CLASS_FORM.form}</legend>
        {DRILL_FORMS.map((form) => (
          <label key={form} class="choice">
            <input
              type="radio"
              name="form"
              checked={drill.form === form}
              onChange={() => onChange({ ...drill, form })}
            />
            <span>
              <b>{CLASS_FORM.forms[form].name}</b> {CLASS_FORM.forms[form].about}
            </span>
          </label>
        ))}
      </fieldset>
      <div class="field">
        <label for="bot-style">{CLASS_FORM.bots}</label>
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
              {STYLE_NAMES[one].name}: {STYLE_NAMES[one].about}
            </option>
          ))}
        </select>
      </div>
      <WaysForm
        mode="class"
        title={CLASS_FORM.ways}
        terms={drillTerms(drill)}
        onChange={(terms) => onChange(withWays(drill, terms))}
      />
    </section>
  );
}

/** At tables of four nothing is taken home. */
function switchesOf(form: Drill['form']) {
  const always = ['racks', 'names', 'cardClosed', 'coach'] as const;
  return form === 'tables' ? always : ([...always, 'takeHome'] as const);
}

interface TermsFieldsProps {
  readonly form: Drill['form'];
  readonly terms: ClassTerms;
  readonly onChange: (terms: ClassTerms) => void;
}

export function TermsFields({ form, terms, onChange }: TermsFieldsProps) {
  return (
    <section class="class-form">
      <div class="field">
        <label for="class-deadline">{CLASS_FORM.deadline}</label>
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
              {one === null ? CLASS_FORM.noDeadline : duration(one)}
            </option>
          ))}
        </select>
      </div>
      {switchesOf(form).map((entry) => (
        <label key={entry} class="choice">
          <input
            type="checkbox"
            checked={terms[entry] === true}
            onChange={(event) => onChange({ ...terms, [entry]: event.currentTarget.checked })}
          />
          {CLASS_FORM[entry]}
        </label>
      ))}
      {isAnonymous(terms) && <p>{anonymitySentences(form).join(' ')}</p>}
      <p class="aside">{CLASS_FORM.told}</p>
    </section>
  );
}
