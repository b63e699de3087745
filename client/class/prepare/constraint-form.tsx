// What the rack of a deal should hold, one trait a row.
import type { CompiledCard, Constraint } from '../../../shared-engine/index.ts';
import { type AmountEntry, type Bound, boundOf, withAmount } from './draft.ts';
import { CONSTRAINT } from './strings.ts';

const ENTRIES = Object.keys(CONSTRAINT.amounts) as readonly AmountEntry[];
const BOUNDS: readonly (readonly [Bound, string])[] = [
  ['any', CONSTRAINT.any],
  ['exactly', CONSTRAINT.exactly],
  ['at-least', CONSTRAINT.atLeast],
  ['at-most', CONSTRAINT.atMost],
];

interface ConstraintFormProps {
  readonly id: string;
  readonly constraint: Constraint;
  /** The sections of the card that the class plays with. */
  readonly sections: CompiledCard['sections'];
  readonly onChange: (constraint: Constraint) => void;
}

export function ConstraintForm({ id, constraint, sections, onChange }: ConstraintFormProps) {
  const { section, ...amounts } = constraint;
  return (
    <fieldset class="constraint">
      <legend>{CONSTRAINT.title}</legend>
      <p class="aside">{CONSTRAINT.about}</p>
      {ENTRIES.map((entry) => (
        <AmountRow
          key={entry}
          id={`${id}-${entry}`}
          entry={entry}
          constraint={constraint}
          onChange={onChange}
        />
      ))}
      <div class="constraint-row">
        <label for={`${id}-section`}>{CONSTRAINT.section}</label>
        <select
          id={`${id}-section`}
          value={section ?? ''}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            onChange(chosen === '' ? amounts : { ...amounts, section: chosen });
          }}
        >
          <option value="">{CONSTRAINT.any}</option>
          {sections.map(({ id: key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </div>
    </fieldset>
  );
}

interface AmountRowProps extends Pick<ConstraintFormProps, 'id' | 'constraint' | 'onChange'> {
  readonly entry: AmountEntry;
}

function AmountRow({ id, entry, constraint, onChange }: AmountRowProps) {
  const { bound, count } = boundOf(constraint[entry]);
  const label = CONSTRAINT.amounts[entry];
  return (
    <div class="constraint-row">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={bound}
        onChange={(event) => {
          const next = BOUNDS.find(([name]) => name === event.currentTarget.value);
          if (next) onChange(withAmount(constraint, entry, next[0], count));
        }}
      >
        {BOUNDS.map(([name, text]) => (
          <option key={name} value={name}>
            {text}
          </option>
        ))}
      </select>
      {bound !== 'any' && (
        <input
          type="number"
          min={0}
          max={14}
          aria-label={`${label}: ${BOUNDS.find(([name]) => name === bound)?.[1]}`}
          value={count}
          onInput={(event) =>
            onChange(withAmount(constraint, entry, bound, Math.trunc(Number(event.currentTarget.value))))
          }
        />
      )}
    </div>
  );
}
