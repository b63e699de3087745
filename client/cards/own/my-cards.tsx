// My cards: the house card and one's own, and what can be done with each.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type CardFile, HOUSE_CARD } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { type CardEntry, markMayShare, unplayable } from '../../storage/own-cards.ts';
import { Bar } from '../../ui/bar.tsx';
import { FileButton } from '../../ui/file-button.tsx';
import { ProblemList } from '../../ui/problem-list.tsx';
import { CARD_SELECT } from '../../ui/strings.ts';
import { type CardAction, CardRow } from './card-row.tsx';
import { readCardText, saveCard } from './card-transfer.ts';
import { browserShelf } from './open-shelf.ts';
import { ShareSheet } from './share-sheet.tsx';
import { emptyCard, nextYears } from './shelf.ts';
import { MY_CARDS } from './strings.ts';

/** The shelf with what is said about it, and what can be done with each card on it. */
function useMyCards(app: App) {
  const shelf = browserShelf();
  const problems = useSignal<readonly string[]>([]);
  const undo = useSignal<{ readonly name: string; readonly run: () => boolean } | null>(null);
  const shared = useSignal<{ readonly entry: CardEntry; readonly card: CardFile } | null>(null);
  useEffect(() => shelf.refresh(), [shelf]);

  function add(card: CardFile, andOpen: boolean) {
    const entry = shelf.add(card);
    problems.value = entry ? [] : [MY_CARDS.refused];
    if (entry && andOpen) app.go({ kind: 'cards', open: entry.key });
  }

  async function takeFile(file: File) {
    const read = readCardText(await file.text());
    if (read.ok) add(read.card, false);
    else problems.value = read.problems;
  }

  /** Runs with the card of an entry; a card that cannot be opened is said to be one. */
  const withCard = (entry: CardEntry, run: (card: CardFile) => void) => {
    const opened = shelf.open(entry.key);
    problems.value = opened ? [] : [MY_CARDS.broken];
    if (opened) run(opened.card);
  };

  function mayShare() {
    if (shared.value) markMayShare(lastingStorage, shared.value.entry.key);
    shelf.refresh();
  }

  const actionsOf = (entry: CardEntry): CardAction[] => [
    [MY_CARDS.open, () => app.go({ kind: 'cards', open: entry.key })],
    [
      MY_CARDS.share,
      () =>
        withCard(entry, (card) => {
          shared.value = { entry, card };
        }),
    ],
    [MY_CARDS.copy, () => withCard(entry, (card) => add(card, false))],
    [MY_CARDS.file, () => withCard(entry, saveCard)],
    [MY_CARDS.nextYear, () => withCard(entry, (card) => add(nextYears(card), true))],
    [entry.archived ? MY_CARDS.unarchive : MY_CARDS.archive, () => shelf.archive(entry, !entry.archived)],
    [
      MY_CARDS.remove,
      () => {
        undo.value = { name: entry.name, run: shelf.remove(entry) };
        if (app.settings.value.card === entry.key) app.change({ card: null });
      },
    ],
  ];

  return { entries: shelf.entries, problems, undo, shared, mayShare, add, takeFile, actionsOf };
}

export function MyCards({ app }: { readonly app: App }) {
  const { entries, problems, undo, shared, mayShare, add, takeFile, actionsOf } = useMyCards(app);
  const chosen = app.settings.value.card;
  function choose(key: string | null) {
    const name = unplayable(lastingStorage, key);
    problems.value = name === null ? [] : [CARD_SELECT.unplayable(name)];
    if (name === null) app.change({ card: key });
  }
  const rowOf = (entry: CardEntry) => (
    <CardRow
      key={entry.key}
      name={entry.name}
      about={`${MY_CARDS.counts(entry.patterns, entry.sections)} · ${entry.used ? MY_CARDS.used(entry.used) : MY_CARDS.neverUsed}`}
      playing={chosen === entry.key}
      onPlay={() => choose(entry.key)}
      actions={actionsOf(entry)}
    />
  );
  const shown = entries.value.filter(({ archived }) => !archived);
  const away = entries.value.filter(({ archived }) => archived);
  return (
    <>
      <Bar app={app} home />
      <main class="my-cards">
        <header>
          <h1>{MY_CARDS.title}</h1>
          <p>{MY_CARDS.about}</p>
        </header>
        <div class="row">
          <button
            type="button"
            class="primary"
            onClick={() => add(emptyCard(MY_CARDS.newName, MY_CARDS.firstSection), true)}
          >
            {MY_CARDS.new}
          </button>
          <FileButton words={MY_CARDS.fromFile} onFile={(file) => void takeFile(file)} />
        </div>
        <ProblemList problems={problems.value} />
        {undo.value && (
          <p class="notice" role="status">
            {MY_CARDS.removed(undo.value.name)}{' '}
            <button
              type="button"
              onClick={() => {
                if (undo.value?.run() === false) problems.value = [MY_CARDS.refused];
                undo.value = null;
              }}
            >
              {MY_CARDS.undo}
            </button>
          </p>
        )}
        <ul class="card-list">
          {shown.map(rowOf)}
          <CardRow
            name={MY_CARDS.house}
            about={`${MY_CARDS.counts(HOUSE_CARD.patterns.length, HOUSE_CARD.sections.length)} · ${MY_CARDS.houseAbout}`}
            playing={chosen === null}
            onPlay={() => choose(null)}
            actions={[
              [MY_CARDS.copy, () => add(HOUSE_CARD, true)],
              [MY_CARDS.file, () => saveCard(HOUSE_CARD)],
            ]}
          />
        </ul>
        {shown.length === 0 && <p class="about">{MY_CARDS.empty}</p>}
        {away.length > 0 && (
          <details class="panel">
            <summary>{MY_CARDS.archived}</summary>
            <ul class="card-list">{away.map(rowOf)}</ul>
          </details>
        )}
      </main>
      {shared.value && (
        <ShareSheet
          app={app}
          card={shared.value.card}
          mayShare={shared.value.entry.mayShare}
          onMayShare={mayShare}
          onClose={() => {
            shared.value = null;
          }}
        />
      )}
    </>
  );
}
