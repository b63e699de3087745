// One section of a card: its name and place, its hands as rows, and the one that is open.
import type { Signal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type CardFile, type CardPattern, exampleOf, writeShorthand } from '../../../shared-engine/index.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { reportOf } from '../own/reports.ts';
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
import type { EditSession } from './session.ts';
import { HAND, SECTION } from './strings.ts';

interface SectionEditorProps {
  readonly session: EditSession;
  readonly section: CardFile['sections'][number];
  readonly place: number;
  /** Id of the hand that is open. */
  readonly open: Signal<string | null>;
  readonly onFull: () => void;
}

export function SectionEditor({ session, section, place, open, onFull }: SectionEditorProps) {
  const card = session.card.value;
  const patterns = card.patterns.filter((pattern) => pattern.section === section.id);

  function add(behind: CardPattern | null, copied: boolean) {
    const body = copied && behind ? bodyOf(behind) : undefined;
    const added = withNewPattern(session.card.value, section.id, behind?.id ?? null, body);
    if (added === null) return onFull();
    session.change(added.card);
    open.value = added.id;
  }

  return (
    <section class="section-editor" aria-label={section.name}>
      <div class="section-head">
        <input
          aria-label={SECTION.name(place + 1)}
          maxLength={80}
          value={section.name}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) =>
            session.change(
              renamedSection(card, section.id, event.currentTarget.value),
              `section-${section.id}`,
            )
          }
        />
        <div class="row">
          <button
            type="button"
            aria-label={`${SECTION.up}: ${section.name}`}
            aria-disabled={place === 0}
            onClick={() => session.change(movedSection(card, section.id, -1))}
          >
            ↑
          </button>
          <button
            type="button"
            aria-label={`${SECTION.down}: ${section.name}`}
            aria-disabled={place === card.sections.length - 1}
            onClick={() => session.change(movedSection(card, section.id, 1))}
          >
            ↓
          </button>
          <ConfirmButton
            name={SECTION.remove}
            yes={SECTION.removeYes}
            no={SECTION.removeNo}
            onYes={() => session.change(withoutSection(card, section.id))}
          />
        </div>
      </div>
      <ol class="hand-list">
        {patterns.map((pattern, nth) => (
          <li key={pattern.id} class={open.value === pattern.id ? 'open' : ''}>
            {open.value === pattern.id ? (
              <HandEditor
                card={card}
                pattern={pattern}
                title={HAND.of(nth + 1, section.name)}
                onChange={(body, name) =>
                  session.change(withPattern(session.card.value, pattern.id, body), name)
                }
                onNext={() => {
                  const next = patterns[nth + 1];
                  if (next && pattern.groups.length === 0) open.value = next.id;
                  else if (next && next.groups.length === 0) open.value = next.id;
                  else add(pattern, false);
                }}
              >
                <HandTools
                  session={session}
                  pattern={pattern}
                  open={open}
                  onDuplicate={() => add(pattern, true)}
                />
              </HandEditor>
            ) : (
              <HandRow
                card={card}
                pattern={pattern}
                title={HAND.of(nth + 1, section.name)}
                onOpen={() => {
                  open.value = pattern.id;
                }}
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

interface HandToolsProps {
  readonly session: EditSession;
  readonly pattern: CardPattern;
  readonly open: Signal<string | null>;
  readonly onDuplicate: () => void;
}

function HandTools({ session, pattern, open, onDuplicate }: HandToolsProps) {
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
          open.value = null;
        }}
      >
        {HAND.remove}
      </button>
      <button
        type="button"
        onClick={() => {
          open.value = null;
        }}
      >
        {HAND.close}
      </button>
    </>
  );
}

interface HandRowProps {
  readonly card: CardFile;
  readonly pattern: CardPattern;
  readonly title: string;
  readonly onOpen: () => void;
}

/** Drawn anew only when this hand changes: a card may have hundreds of them. */
function HandRow({ card, pattern, title, onOpen }: HandRowProps) {
  const { parameters } = card;
  return useMemo(() => {
    const report = reportOf(pattern, card);
    const example = exampleOf(pattern, parameters, pattern.id);
    const tiles =
      example?.faces.flatMap((face, nth) => new Array(pattern.groups[nth]!.size).fill(face)) ?? [];
    return (
      <button
        type="button"
        class={report.problems.length > 0 ? 'hand-row wrong' : 'hand-row'}
        onClick={onOpen}
      >
        <span class="spoken">{title}: </span>
        <TileRow tiles={tiles} />
        <span class="hand-text">{writeShorthand(pattern)}</span>
        <span class="about">
          {report.problems.length > 0 ? HAND.tiles(report.tiles) : HAND.ways(report.hands)}
        </span>
      </button>
    );
  }, [pattern, parameters, title]);
}
