// The editor of a card: its name, its sections, and the hand that is being put together.
import { useSignal } from '@preact/signals';
import { useEffect, useLayoutEffect, useMemo } from 'preact/hooks';
import { CARD_LIMITS, type CardFile } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { browserTimer } from '../../connection/socket.ts';
import { lastingStorage, onOtherTabs } from '../../storage/browser-storage.ts';
import { ownCardKey } from '../../storage/own-cards.ts';
import { Bar } from '../../ui/bar.tsx';
import { FullNote } from '../../ui/full-note.tsx';
import { CardCheck } from '../check/card-check.tsx';
import { CHECK } from '../check/strings.ts';
import { saveCard } from '../own/card-transfer.ts';
import { browserShelf } from '../own/open-shelf.ts';
import { type CardTotals, totalsOf } from '../own/reports.ts';
import { MY_CARDS } from '../own/strings.ts';
import { withSection, withYear } from './edit.ts';
import { PrintedCard } from './printed-card.tsx';
import { SectionEditor } from './section-editor.tsx';
import { type EditSession, openSession } from './session.ts';
import { ShorthandHelp } from './shorthand-help.tsx';
import { EDITOR, SECTION } from './strings.ts';
import { useGradually } from './use-gradually.ts';

interface CardEditorProps {
  readonly app: App;
  readonly cardKey: string;
}

export function CardEditor({ app, cardKey }: CardEditorProps) {
  const session = useMemo(
    () => openSession(cardKey, { shelf: browserShelf(), startTimer: browserTimer }),
    [cardKey],
  );
  useEffect(() => {
    if (session === null) return;
    const ends = onOtherTabs(ownCardKey(cardKey), () => session.changedElsewhere());
    // A phone may end the page without another word once it is hidden.
    const hidden = () => session.flush();
    document.addEventListener('visibilitychange', hidden);
    return () => {
      ends();
      document.removeEventListener('visibilitychange', hidden);
    };
  }, [session, cardKey]);
  // Before the next screen reads what is stored; the cleanup of a passive effect would run a frame later.
  useLayoutEffect(
    () => () => {
      // Drops a hand that was begun and left empty.
      session?.show(null);
      session?.flush();
    },
    [session],
  );
  return (
    <>
      <Bar app={app} home />
      <main class="my-cards card-editor">
        <p>
          <button type="button" onClick={() => app.go({ kind: 'cards', open: null })}>
            {MY_CARDS.back}
          </button>
        </p>
        {session ? (
          <Editing app={app} session={session} cardKey={cardKey} />
        ) : (
          <p role="alert">{EDITOR.missing}</p>
        )}
      </main>
    </>
  );
}

interface EditingProps {
  readonly app: App;
  readonly session: EditSession;
  readonly cardKey: string;
}

function Editing({ app, session, cardKey }: EditingProps) {
  const card = session.card.value;
  const fresh = useSignal<string | null>(null);
  const help = useSignal(false);
  const full = useSignal(false);
  const totals = totalsOf(card);
  const drawn = shares(card, useGradually(card.patterns.length));

  function addSection() {
    const added = withSection(card, SECTION.newName);
    full.value = added === null;
    if (!added) return;
    session.change(added.card);
    fresh.value = added.id;
  }

  return (
    <>
      <Caution />
      <CardHead session={session} cardKey={cardKey} />
      <Tools
        session={session}
        onHelp={() => {
          help.value = true;
        }}
      />
      <StoringNotice app={app} session={session} />
      <p role="status">
        {totals.uncounted > 0 ? EDITOR.counting : EDITOR.totals(totals.ready, totals.all, totals.ways)}
        {totals.ready + totals.uncounted < totals.all && ` ${EDITOR.partial}`}
      </p>
      {totals.widest.length > 0 && (
        <p class="notice" role="alert">
          {EDITOR.tooMany(totals.widest)}
        </p>
      )}
      {card.sections.slice(0, drawn.length).map((section, nth) => (
        <SectionEditor
          key={section.id}
          session={session}
          section={section}
          drawn={drawn[nth] ?? 0}
          fresh={fresh.value === section.id}
          onFull={() => {
            full.value = true;
          }}
        />
      ))}
      {full.value && (
        <p class="notice" role="alert">
          {SECTION.full}
        </p>
      )}
      <div class="row">
        <button type="button" onClick={addSection}>
          {SECTION.add}
        </button>
      </div>
      <CardCheck card={card} whyNot={whyNotChecked(totals)} />
      <PrintedCard card={card} />
      {help.value && (
        <ShorthandHelp
          onClose={() => {
            help.value = false;
          }}
        />
      )}
    </>
  );
}

/** How many hands of each section are among the first so many of the card; nothing for sections behind the last of them. */
function shares({ sections, patterns }: CardFile, most: number): number[] {
  const shared: number[] = [];
  let left = most;
  for (const { id } of sections) {
    if (left <= 0) break;
    const share = Math.min(left, patterns.filter(({ section }) => section === id).length);
    shared.push(share);
    left -= share;
  }
  return shared;
}

function whyNotChecked({ ready, uncounted, widest }: CardTotals): string | null {
  if (ready + uncounted === 0) return CHECK.none;
  return widest.length > 0 ? CHECK.tooMany : null;
}

interface CardHeadProps {
  readonly session: EditSession;
  readonly cardKey: string;
}

/** A name that is taken stays in its field and does not become the card's. */
function CardHead({ session, cardKey }: CardHeadProps) {
  const card = session.card.value;
  const refused = useSignal<{ readonly name: string; readonly why: string } | null>(null);
  function rename(name: string) {
    const isEmpty = name.trim() === '';
    const isRefused = isEmpty || browserShelf().isTaken(name, cardKey);
    refused.value = isRefused ? { name, why: isEmpty ? EDITOR.noName : EDITOR.taken } : null;
    if (!isRefused) session.change({ ...card, name }, 'name');
  }
  return (
    <div class="editor-head">
      <div class="field">
        <label for="card-name">{EDITOR.name}</label>
        <input
          id="card-name"
          maxLength={CARD_LIMITS.name}
          value={refused.value?.name ?? card.name}
          aria-invalid={refused.value !== null}
          aria-describedby="card-name-refused"
          onInput={(event) => rename(event.currentTarget.value)}
          onBlur={() => {
            refused.value = null;
          }}
        />
        <FullNote text={refused.value?.name ?? card.name} most={CARD_LIMITS.name} />
        <p id="card-name-refused" class="hand-problems" aria-live="polite">
          {refused.value?.why}
        </p>
      </div>
      <div class="field">
        <label for="card-year">{EDITOR.year}</label>
        <input
          id="card-year"
          inputMode="numeric"
          maxLength={4}
          value={card.parameters.year ?? ''}
          onChange={(event) => session.change(withYear(card, event.currentTarget.value))}
        />
      </div>
    </div>
  );
}

function Tools({ session, onHelp }: { readonly session: EditSession; readonly onHelp: () => void }) {
  return (
    <div class="row card-tools">
      <button type="button" aria-disabled={!session.canUndo.value} onClick={() => session.undo()}>
        {EDITOR.undo}
      </button>
      <button type="button" aria-disabled={!session.canRedo.value} onClick={() => session.redo()}>
        {EDITOR.redo}
      </button>
      <button type="button" onClick={onHelp}>
        {EDITOR.help}
      </button>
      <button type="button" onClick={() => saveCard(session.card.value)}>
        {MY_CARDS.file}
      </button>
      <button type="button" onClick={() => window.print()}>
        {EDITOR.print}
      </button>
    </div>
  );
}

function StoringNotice({ app, session }: { readonly app: App; readonly session: EditSession }) {
  const storing = session.storing.value;
  /** Whether the browser has refused to keep one's own version beside the other. */
  const isFull = useSignal(false);
  const words = EDITOR.storing[storing];
  if (storing === 'stored' || storing === 'changed') {
    return (
      <p class="about" role="status">
        {words}
      </p>
    );
  }
  function keepMine() {
    const entry = browserShelf().add(session.card.value);
    isFull.value = entry === null;
    if (entry) app.go({ kind: 'cards', open: entry.key });
  }
  return (
    <div class="notice" role="alert">
      <p>{words}</p>
      {isFull.value && <p>{EDITOR.storing.refused}</p>}
      <div class="row">
        {storing === 'changed-elsewhere' && (
          <button type="button" onClick={() => session.takeOther()}>
            {EDITOR.takeOther}
          </button>
        )}
        {storing !== 'refused' && (
          <button type="button" onClick={keepMine}>
            {storing === 'removed-elsewhere' ? EDITOR.keepAgain : EDITOR.keepMine}
          </button>
        )}
        <button type="button" onClick={() => saveCard(session.card.value)}>
          {MY_CARDS.file}
        </button>
      </div>
    </div>
  );
}

/** Said once on a device. */
function Caution() {
  const read = useSignal(lastingStorage.read('card-caution') === 'read');
  if (read.value) return null;
  return (
    <div class="notice">
      <p>{EDITOR.caution}</p>
      <button
        type="button"
        onClick={() => {
          lastingStorage.write('card-caution', 'read');
          read.value = true;
        }}
      >
        {EDITOR.cautionRead}
      </button>
    </div>
  );
}
