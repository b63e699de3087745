// A card that somebody sends as a link: looked at, then kept, added to a card of one's own, or left alone.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type CardFile, meanSameHands, mergedCard } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { Bar } from '../../ui/bar.tsx';
import { ProblemList } from '../../ui/problem-list.tsx';
import { type UnpackedCard, unpackCard } from './card-transfer.ts';
import { browserShelf } from './open-shelf.ts';
import { FROM_LINK, MY_CARDS } from './strings.ts';

interface CardFromLinkProps {
  readonly app: App;
  readonly packed: string;
}

export function CardFromLink({ app, packed }: CardFromLinkProps) {
  const unpacked = useSignal<UnpackedCard | null>(null);
  useEffect(() => {
    void unpackCard(packed).then((answer) => {
      unpacked.value = answer;
    });
  }, [packed, unpacked]);
  return (
    <>
      <Bar app={app} home />
      <main class="my-cards">
        <h1>{FROM_LINK.title}</h1>
        {unpacked.value === null && <p role="status">{FROM_LINK.reading}</p>}
        {unpacked.value?.ok === false && (
          <>
            <p>{FROM_LINK.problems}</p>
            <ProblemList problems={unpacked.value.problems} />
          </>
        )}
        {unpacked.value?.ok && <Offer app={app} card={unpacked.value.card} />}
        <div class="row">
          <button type="button" onClick={() => app.go({ kind: 'cards', open: null })}>
            {FROM_LINK.leave}
          </button>
        </div>
      </main>
    </>
  );
}

function Offer({ app, card }: { readonly app: App; readonly card: CardFile }) {
  const shelf = browserShelf();
  const problems = useSignal<readonly string[]>([]);
  const opened = shelf.entries.value.flatMap((entry) => {
    const own = shelf.open(entry.key);
    return own ? [{ entry, ...own }] : [];
  });
  const same = opened.find((own) => meanSameHands(own.card, card));
  const target = useSignal(opened[0]?.entry.key ?? '');

  function keep() {
    const entry = shelf.add(card);
    if (entry) app.go({ kind: 'cards', open: entry.key });
    else problems.value = [MY_CARDS.refused];
  }

  function merge() {
    const into = opened.find(({ entry }) => entry.key === target.value);
    if (!into) return;
    const stored = shelf.store(into.entry.key, mergedCard(into.card, card), into.revision);
    if (typeof stored === 'object') app.go({ kind: 'cards', open: into.entry.key });
    else problems.value = [MY_CARDS.refused];
  }

  return (
    <>
      <section class="card-row">
        <h2>{card.name}</h2>
        <p>{MY_CARDS.counts(card.patterns.length, card.sections.length)}</p>
        <p class="about">{card.sections.map(({ name }) => name).join(' · ')}</p>
        {same && <p>{`${FROM_LINK.own}${same.entry.name}`}</p>}
      </section>
      <p class="notice">{FROM_LINK.caution}</p>
      <ProblemList problems={problems.value} />
      <div class="row">
        <button type="button" class="primary" onClick={keep}>
          {FROM_LINK.add}
        </button>
      </div>
      {opened.length > 0 && (
        <details class="panel">
          <summary>{FROM_LINK.merge}</summary>
          <p>{FROM_LINK.mergeAbout}</p>
          <div class="field">
            <label for="merge-into">{FROM_LINK.mergeInto}</label>
            <select
              id="merge-into"
              value={target.value}
              onChange={(event) => {
                target.value = event.currentTarget.value;
              }}
            >
              {opened.map(({ entry }) => (
                <option key={entry.key} value={entry.key}>
                  {entry.name}
                </option>
              ))}
            </select>
          </div>
          <button type="button" onClick={merge}>
            {FROM_LINK.mergeButton}
          </button>
        </details>
      )}
    </>
  );
}
