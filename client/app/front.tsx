// The front page: alone, with friends or with a group; a field for a code; a name asked once.
import { useSignal } from '@preact/signals';
import type { OpenRoom } from '../../shared-engine/index.ts';
import { CodeField } from '../room/code-field.tsx';
import { drillWaysOf } from '../room/ways.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { cardForTables, markCardUsed, unplayable } from '../storage/own-cards.ts';
import { Bar, Mark } from '../ui/bar.tsx';
import { goInPage } from '../ui/in-page-link.ts';
import { NameField } from '../ui/name-field.tsx';
import { CARD_SELECT } from '../ui/strings.ts';
import { FRONT, LAZY } from './front-strings.ts';
import { roomsPart } from './lazy.ts';
import { openCode } from './open-code.ts';
import { PracticeLinks } from './practice-links.tsx';
import type { App } from './routes/app.ts';
import { ownCardOf } from './routes/deal-link.ts';
import { pathOf } from './routes/route.ts';
import { TablePicture } from './table-picture.tsx';
import { TermsForm } from './terms-form.tsx';
import { WhereYouWere } from './where-you-were.tsx';

export function Front({ app }: { readonly app: App }) {
  const settings = app.settings.value;
  const busy = useSignal(false);
  const problem = useSignal<string | null>(null);
  const askName = useSignal(false);
  const offline = useSignal(false);
  const card = useSignal<unknown>(null);

  /** A file chosen for this table, or else the card that is chosen for all new ones. */
  const chosenCard = () => card.value ?? cardForTables(lastingStorage, settings.card);
  /** Says so and answers false where the chosen card cannot be played: another card in its place would judge wrongly. */
  const hasCard = () => {
    const name = card.value === null ? unplayable(lastingStorage, settings.card) : null;
    problem.value = name === null ? null : CARD_SELECT.unplayable(name);
    return name === null;
  };
  const markUsed = () => {
    if (card.value === null)
      markCardUsed(lastingStorage, settings.card, new Date().toISOString().slice(0, 10));
  };

  async function open(mode: OpenRoom['mode']) {
    const name = settings.name.trim();
    if (name === '' && mode === 'friends') {
      askName.value = true;
      return;
    }
    if (!hasCard()) return;
    busy.value = true;
    const bot = mode === 'alone' ? settings.style : null;
    const rooms = await roomsPart.fetch();
    if (rooms === null) {
      busy.value = false;
      problem.value = LAZY.failed;
      return;
    }
    const answer = await rooms.openRoom({
      name: name || FRONT.guest,
      mode,
      // Alone nothing has to stay private, and an open deal can be played again (rule Z2).
      terms: { ...settings.ways[mode], ...(mode === 'alone' && { revealRacks: true }) },
      bots: [bot, bot, bot],
      card: chosenCard(),
    });
    busy.value = false;
    if (answer.ok) {
      markUsed();
      app.go({ kind: 'room', code: answer.value.code });
    } else {
      problem.value = answer.message;
      offline.value = answer.code === 'unreachable';
    }
  }

  async function openSame() {
    if (!hasCard()) return;
    busy.value = true;
    const rooms = await roomsPart.fetch();
    const { style, ways } = settings;
    const answer = await rooms?.openSameDeal({ style, ways: drillWaysOf(ways.friends), card: chosenCard() });
    busy.value = false;
    if (answer?.ok) {
      markUsed();
      app.go({ kind: 'class', code: answer.value.code, part: 'main' });
    } else problem.value = answer?.message ?? LAZY.failed;
  }

  return (
    <>
      <Bar app={app} home={false} />
      <main class="front">
        <div class="welcome">
          <header class="masthead">
            <Mark />
            <h1>Quadrille</h1>
            <p>{FRONT.promise}</p>
            <p class="first-time">
              <a
                href={pathOf({ kind: 'lesson' })}
                onClick={(event) => goInPage(event, () => app.go({ kind: 'lesson' }))}
              >
                {FRONT.lesson}
              </a>
            </p>
          </header>
          <TablePicture />
        </div>
        <NameField
          value={settings.name}
          missing={askName.value && settings.name.trim() === ''}
          onChange={(name) => app.change({ name })}
        />
        <div class="modes">
          <section class="mode first">
            <h2>{FRONT.alone.title}</h2>
            <p>{FRONT.alone.about}</p>
            <button
              type="button"
              class="primary"
              aria-disabled={busy.value}
              onClick={() => void open('alone')}
            >
              {FRONT.alone.button}
            </button>
          </section>
          <section class="mode">
            <h2>{FRONT.friends.title}</h2>
            <p>{FRONT.friends.about}</p>
            <button
              type="button"
              class="primary"
              aria-disabled={busy.value}
              onClick={() => void open('friends')}
            >
              {FRONT.friends.button}
            </button>
            <button type="button" aria-disabled={busy.value} onClick={() => void openSame()}>
              {FRONT.friends.same}
            </button>
          </section>
          <section class="mode">
            <h2>{FRONT.group.title}</h2>
            <p>{FRONT.group.about}</p>
            <button type="button" class="primary" onClick={() => app.go({ kind: 'prepare', drill: null })}>
              {FRONT.group.button}
            </button>
          </section>
        </div>
        <p class="notice" role="alert">
          {problem.value}
        </p>
        <WhereYouWere app={app} />
        <PracticeLinks app={app} />
        {offline.value && (
          <button
            type="button"
            onClick={() =>
              app.go({ kind: 'deal', shared: { ...app.freshDeal(), cardOf: ownCardOf(settings.card) } })
            }
          >
            {FRONT.offline}
          </button>
        )}
        <CodeField onCode={(code) => void openCode(app, code)} />
        <TermsForm
          settings={settings}
          onChange={app.change}
          onCard={(file) => {
            card.value = file;
          }}
        />
      </main>
    </>
  );
}
