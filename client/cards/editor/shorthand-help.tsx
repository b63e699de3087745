// How hands are typed, on one page: the few signs, each with an example, and whole hands to compare.
import { Sheet } from '../../ui/sheet.tsx';
import { TYPING } from './help-strings.ts';

export function ShorthandHelp({ onClose }: { readonly onClose: () => void }) {
  return (
    <Sheet title={TYPING.title} onClose={onClose}>
      <p>{TYPING.about}</p>
      <Typed title={TYPING.signs} rows={TYPING.rows} />
      <Typed title={TYPING.wholeHands} rows={TYPING.hands} />
      <p>{TYPING.pad}</p>
    </Sheet>
  );
}

interface TypedProps {
  readonly title: string;
  /** What is typed, and what it means. */
  readonly rows: readonly (readonly [string, string])[];
}

function Typed({ title, rows }: TypedProps) {
  return (
    <section>
      <h3>{title}</h3>
      <dl class="typing-help">
        {rows.map(([typed, means]) => (
          <div key={typed}>
            <dt>
              {typed.split(/ {2,}/).map((one) => (
                <kbd key={one}>{one}</kbd>
              ))}
            </dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
