// The front page: alone, with friends or with a group; a field for a code; a name asked once.

import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { OpenRoom } from '../../shared-engine/index.ts';
import { drillWaysOf } from '../room/ways.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { cardForTables, markCardUsed, unplayable } from '../storage/own-cards.ts';
import { Bar, Mark } from '../ui/bar.tsx';
import { goInPage } from '../ui/in-page-link.ts';
import { NameField } from '../ui/name-field.tsx';
import { CARD_SELECT } from '../ui/strings.ts';
import { AnyCodeField } from './any-code-field.tsx';
import { FRONT, LAZY } from './front-strings.ts';
import { roomsPart } from './lazy.ts';
import { PracticeLinks } from './practice-links.tsx';
import type { App } from './routes/app.ts';
import { ownCardOf } from './routes/deal-link.ts';
import { pathOf } from './routes/route.ts';
import { TablePicture } from './table-picture.tsx';
import { TermsForm } from './terms-form.tsx';
import { WhereYouWere } from './where-you-were.tsx';

/** The doors behind which a table is opened. */
type Door = 'alone' | 'friends';

/** Why no table was opened, said at the door that was tapped. */
interface DoorProblem {
  readonly at: Door;
  readonly message: string;
  /** Whether the page can do without what is missing. */
  readonly canPlayHere: boolean;
}

export function Front({ app }: { readonly app: App }) {
  const settings = app.settings.value;
  const busy = useSignal(false);
  const problem = useSignal<DoorProblem | null>(null);
  const askName = useSignal(false);
  const card = useSignal<unknown>(null);

  /** A file chosen for this table, or else the card that is chosen for all new ones. */
  const chosenCard = () => card.value ?? cardForTables(lastingStorage, settings.card);
  /** Says so and answers false where the chosen card cannot be played: another card in its place would judge wrongly. */
  const hasCard = (at: Door) => {
    const name = card.value === null ? unplayable(lastingStorage, settings.card) : null;
    problem.value = null;
    if (name !== null) say(at, CARD_SELECT.unplayable(name));
    return name === null;
  };
  const say = (at: Door, message: string, canPlayHere = false) => {
    problem.value = { at, message, canPlayHere };
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
    if (!hasCard(mode)) return;
    busy.value = true;
    const bot = mode === 'alone' ? settings.style : null;
    const rooms = await roomsPart.fetch();
    if (rooms === null) {
      busy.value = false;
      say(mode, LAZY.failed);
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
    } else say(mode, answer.message, answer.code === 'unreachable');
  }

  async function openSame() {
    if (!hasCard('friends')) return;
    busy.value = true;
    const rooms = await roomsPart.fetch();
    const { style, ways } = settings;
    const answer = await rooms?.openSameDeal({ style, ways: drillWaysOf(ways.friends), card: chosenCard() });
    busy.value = false;
    if (answer?.ok) {
      markUsed();
      app.go({ kind: 'class', code: answer.value.code, part: 'main' });
    } else say('friends', answer?.message ?? LAZY.failed);
  }

  const playHere = () =>
    app.go({ kind: 'deal', shared: { ...app.freshDeal(), cardOf: ownCardOf(settings.card) } });

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
        <WhereYouWere app={app} at="above" />
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
            <ProblemAt door="alone" problem={problem.value} onPlayHere={playHere} />
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
            <ProblemAt door="friends" problem={problem.value} onPlayHere={playHere} />
          </section>
          <section class="mode">
            <h2>{FRONT.group.title}</h2>
            <p>{FRONT.group.about}</p>
            <button type="button" class="primary" onClick={() => app.go({ kind: 'prepare', drill: null })}>
              {FRONT.group.button}
            </button>
          </section>
        </div>
        <WhereYouWere app={app} at="below" />
        <PracticeLinks app={app} />
        <AnyCodeField app={app} />
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

interface ProblemAtProps {
  readonly door: Door;
  readonly problem: DoorProblem | null;
  readonly onPlayHere: () => void;
}

/** Under the button that was tapped, where the eyes are. */
function ProblemAt({ door, problem, onPlayHere }: ProblemAtProps) {
  const place = useRef<HTMLDivElement>(null);
  const here = problem?.at === door ? problem : null;
  useEffect(() => {
    if (here) place.current?.scrollIntoView({ block: 'nearest' });
  }, [here]);
  return (
    <div class="door-problem" ref={place}>
      <p class="notice" role="alert">
        {here?.message}
      </p>
      {here?.canPlayHere && (
        <button type="button" onClick={onPlayHere}>
          {FRONT.offline}
        </button>
      )}
    </div>
  );
}
