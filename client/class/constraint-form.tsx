// What a described deal is to be like, one amount a row.
import type { CompiledCard, Wish } from '../../shared-engine/index.ts';
import { type AmountEntry, type Bound, boundOf, withAmount } from './draft.ts';
import { PREPARE, WISHES } from './strings.ts';

const ENTRIES = Object.keys(WISHES) as readonly AmountEntry[];
const BOUNDS: readonly (readonly [Bound, string])[] = [
  ['any', PREPARE.any],
  ['exactly', PREPARE.exactly],
  ['at-least', PREPARE.atLeast],
  ['at-most', PREPARE.atMost],
];

interface WishFormProps {
  readonly id: string;
  readonly wish: Wish;
  /** Of the card that is played with. */
  readonly families: CompiledCard['families'];
  readonly onChange: (wish: Wish) => void;
}

export function WishForm({ id, wish, families, onChange }: WishFormProps) {
  const { family, ...amounts } = wish;
  return (
    <div class="wish">
      <p>{PREPARE.wish}</p>
      {ENTRIES.map((entry) => {
        const { bound, count } = boundOf(wish[entry]);
        return (
          <div key={entry} class="wish-row">
            <label for={`${id}-${entry}`}>{WISHES[entry]}</label>
            <select
              id={`${id}-${entry}`}
              value={bound}
              onChange={(event) => {
                const next = BOUNDS.find(([name]) => name === event.currentTarget.value);
                if (next) onChange(withAmount(wish, entry, next[0], count));
              }}
            >
              {BOUNDS.map(([name, words]) => (
                <option key={name} value={name}>
                  {words}
                </option>
              ))}
            </select>
            {bound !== 'any' && (
              <input
                type="number"
                min={0}
                max={14}
                aria-label={`${WISHES[entry]}: ${BOUNDS.find(([name]) => name === bound)?.[1]}`}
                value={count}
                onInput={(event) =>
                  onChange(withAmount(wish, entry, bound, Math.trunc(Number(event.currentTarget.value))))
                }
              />
            )}
          </div>
        );
      })}
      <div class="wish-row">
        <label for={`${id}-family`}>{PREPARE.family}</label>
        <select
          id={`${id}-family`}
          value={family ?? ''}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            onChange(chosen === '' ? amounts : { ...amounts, family: chosen });
          }}
        >
          <option value="">{PREPARE.any}</option>
          {families.map(({ id: name, name: words }) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}
