// How hands are typed, on one page: the few signs, each with an example, and whole hands to compare.
import { Sheet } from '../../ui/sheet.tsx';
import { TYPING } from './help-strings.ts';

export function ShorthandHelp({ onClose }: { readonly onClose: () => void }) {
  return (
    <Sheet title={TYPING.title} onClose={onClose}>
      <p>{TYPING.about}</p>
      <section>
        <h3>{TYPING.signs}</h3>
        <dl class="typing-help">
          {TYPING.rows.map(([typed, means]) => (
            <div key={typed}>
              <dt>
                <kbd>{typed}</kbd>
              </dt>
              <dd>{means}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section>
        <h3>{TYPING.wholeHands}</h3>
        <dl class="typing-help">
          {TYPING.hands.map(([typed, means]) => (
            <div key={typed}>
              <dt>
                <kbd>{typed}</kbd>
              </dt>
              <dd>{means}</dd>
            </div>
          ))}
        </dl>
      </section>
      <p>{TYPING.pad}</p>
    </Sheet>
  );
}
