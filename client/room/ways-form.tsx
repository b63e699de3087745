// The ways to play as a form, folded until somebody wants them otherwise: one line each.
import { type Mode, STANDARD_TERMS, type Terms } from '../../shared-engine/index.ts';
import { WAYS } from './strings.ts';
import { optionOf, unusualCount, WAYS_OF } from './ways.ts';

interface WaysFormProps {
  /** Who plays: what may be chosen, and what is usual. */
  readonly mode: Mode;
  readonly title: string;
  readonly terms: Terms;
  readonly onChange: (terms: Terms) => void;
}

export function WaysForm({ mode, title, terms, onChange }: WaysFormProps) {
  const unusual = unusualCount(terms, mode);
  return (
    <details class="ways-form">
      <summary>
        {title} <span class="aside">{WAYS.summary(unusual)}</span>
      </summary>
      {WAYS_OF[mode].map((way) => (
        <label key={way.name} class="way">
          <span>{way.title}</span>
          <select
            value={optionOf(way, terms)?.label}
            onChange={({ currentTarget }) => {
              const option = way.options.find(({ label }) => label === currentTarget.value);
              if (option) onChange({ ...terms, ...option.part });
            }}
          >
            {way.options.map(({ label }) => (
              <option key={label} value={label}>
                {label}
              </option>
            ))}
          </select>
        </label>
      ))}
      {unusual > 0 && (
        <button type="button" onClick={() => onChange(STANDARD_TERMS[mode])}>
          {WAYS.asUsual}
        </button>
      )}
    </details>
  );
}
