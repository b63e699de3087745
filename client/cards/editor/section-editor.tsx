// One section of a card: its name and place, its hands as rows, and the one that is open.
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { CARD_LIMITS, type CardFile, type CardPattern } from '../../../shared-engine/index.ts';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import {
  movedPattern,
  movedSection,
  renamedSection,
  withNewPattern,
  withoutPattern,
  withoutSection,
  withPattern,
} from './edit.ts';
import { bodyOf, HandEditor } from './hand-editor.tsx';
import { HandRow } from './hand-row.tsx';
import type { EditSession } from './session.ts';
import { HAND, SECTION } from './strings.ts';

interface SectionEditorProps {
  readonly session: EditSession;
  readonly section: CardFile['sections'][number];
  /** How many of its hands are drawn so far. */
  readonly drawn: number;
  /** Just added: its name is asked for. */
  readonly fresh: boolean;
  readonly onFull: () => void;
}

/** Drawn anew only when this section changes: a card may have hundreds of hands elsewhere. */
export function SectionEditor({ session, section, drawn: allowed, fresh, onFull }: SectionEditorProps) {
  const { sections, patterns: all, parameters } = session.card.value;
  const own = all.filter((pattern) => pattern.section === section.id);
  const last = useRef(own);
  const isSame = own.length === last.current.length && own.every((one, nth) => one === last.current[nth]);
  if (!isSame) last.current = own;
  const patterns = last.current;
  const open = patterns.some(({ id }) => id === session.open.value) ? session.open.value : null;
  const place = sections.findIndex(({ id }) => id === section.id);
  const isLast = place === sections.length - 1;
  const drawn = Math.min(allowed, patterns.length);
  return useMemo(
    () => (
      <Section {...{ session, section, patterns, drawn, parameters, open, place, isLast, fresh, onFull }} />
    ),
    [section, patterns, drawn, parameters, open, place, isLast, fresh],
  );
}

interface SectionProps extends SectionEditorProps {
  readonly patterns: readonly CardPattern[];
  readonly parameters: CardFile['parameters'];
  /** Id of its hand that is open; null when there is none. */
  readonly open: string | null;
  readonly place: number;
  readonly isLast: boolean;
}

function Section(props: SectionProps) {
  const { session, section, patterns, drawn, parameters, open, onFull } = props;

  function add(behind: CardPattern | null, copied: boolean) {
    const body = copied && behind ? bodyOf(behind) : undefined;
    const added = withNewPattern(session.card.value, section.id, behind?.id ?? null, body);
    if (added === null) return onFull();
    session.change(added.card);
    session.show(added.id);
  }

  return (
    <section class="section-editor" aria-label={section.name}>
      <SectionHead {...props} onEnter={() => add(null, false)} />
      <ol class="hand-list">
        {patterns.slice(0, drawn).map((pattern, nth) => (
          <li key={pattern.id} class={open === pattern.id ? 'open' : ''}>
            {open === pattern.id ? (
              <HandEditor
                parameters={parameters}
                pattern={pattern}
                title={HAND.of(nth + 1, section.name)}
                onChange={(body, name) =>
                  session.change(withPattern(session.card.value, pattern.id, body), name)
                }
                onNext={() => {
                  const next = patterns[nth + 1];
                  if (next) session.show(next.id);
                  else if (pattern.groups.length > 0) add(pattern, false);
                }}
              >
                <HandTools session={session} pattern={pattern} onDuplicate={() => add(pattern, true)} />
              </HandEditor>
            ) : (
              <HandRow
                parameters={parameters}
                pattern={pattern}
                title={HAND.of(nth + 1, section.name)}
                onOpen={() => session.show(pattern.id)}
              />
            )}
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => add(null, false)}>
        {SECTION.addHand}
        <span class="spoken">: {section.name}</span>
      </button>
    </section>
  );
}

interface SectionHeadProps extends SectionProps {
  readonly onEnter: () => void;
}

function SectionHead({ session, section, place, isLast, fresh, onEnter }: SectionHeadProps) {
  const name = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    if (fresh) name.current?.focus();
  }, [fresh]);
  return (
    <div class="section-head">
      <input
        ref={name}
        aria-label={SECTION.name(place + 1)}
        maxLength={CARD_LIMITS.name}
        value={section.name}
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) =>
          session.change(
            renamedSection(session.card.value, section.id, event.currentTarget.value),
            `section-${section.id}`,
          )
        }
        onKeyDown={(event) => {
          if (event.key === 'Enter') onEnter();
        }}
      />
      <div class="row">
        <button
          type="button"
          aria-label={`${SECTION.up}: ${section.name}`}
          aria-disabled={place === 0}
          onClick={() => session.change(movedSection(session.card.value, section.id, -1))}
        >
          ↑
        </button>
        <button
          type="button"
          aria-label={`${SECTION.down}: ${section.name}`}
          aria-disabled={isLast}
          onClick={() => session.change(movedSection(session.card.value, section.id, 1))}
        >
          ↓
        </button>
        <ConfirmButton
          name={SECTION.remove}
          yes={SECTION.removeYes}
          no={SECTION.removeNo}
          onYes={() => session.change(withoutSection(session.card.value, section.id))}
        />
      </div>
    </div>
  );
}

interface HandToolsProps {
  readonly session: EditSession;
  readonly pattern: CardPattern;
  readonly onDuplicate: () => void;
}

function HandTools({ session, pattern, onDuplicate }: HandToolsProps) {
  const move = (step: -1 | 1) => session.change(movedPattern(session.card.value, pattern.id, step));
  return (
    <>
      <button type="button" onClick={onDuplicate}>
        {HAND.duplicate}
      </button>
      <button type="button" aria-label={HAND.up} onClick={() => move(-1)}>
        ↑
      </button>
      <button type="button" aria-label={HAND.down} onClick={() => move(1)}>
        ↓
      </button>
      <button
        type="button"
        onClick={() => {
          session.change(withoutPattern(session.card.value, pattern.id));
          session.show(null);
        }}
      >
        {HAND.remove}
      </button>
      <button type="button" onClick={() => session.show(null)}>
        {HAND.close}
      </button>
    </>
  );
}
