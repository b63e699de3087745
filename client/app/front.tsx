// The front page: three doors, one field for a code, a name asked once.
import { useSignal } from '@preact/signals';
import type { OpenRoom } from '../../shared-engine/index.ts';
import { PRACTICE } from '../practice/strings.ts';
import { CodeField } from '../room/code-field.tsx';
import { Bar } from '../ui/bar.tsx';
import { goInPage } from '../ui/in-page-link.ts';
import { Mark } from '../ui/mark.tsx';
import { NameField } from '../ui/name-field.tsx';
import { deskPart, roomsPart } from './features.ts';
import { FRONT } from './front-strings.ts';
import { PART } from './lazy-strings.ts';
import type { App } from './routes/app.ts';
import { pathOf } from './routes/route.ts';
import { TermsForm } from './terms-form.tsx';

export function Front({ app }: { readonly app: App }) {
  const settings = app.settings.value;
  const busy = useSignal(false);
  const problem = useSignal<string | null>(null);
  const askName = useSignal(false);
  const offline = useSignal(false);
  const card = useSignal<unknown>(null);

  async function open(door: OpenRoom['door']) {
    const name = settings.name.trim();
    if (name === '' && door === 'friends') {
      askName.value = true;
      return;
    }
    busy.value = true;
    problem.value = null;
    const bot = door === 'alone' ? settings.style : null;
    const rooms = await roomsPart.fetch();
    if (rooms === null) {
      busy.value = false;
      problem.value = PART.missing;
      return;
    }
    const answer = await rooms.openRoom({
      name: name || FRONT.nameless,
      door,
      terms: { deadline: settings.deadline, layOpen: settings.layOpen },
      bots: [bot, bot, bot],
      card: card.value,
    });
    busy.value = false;
    if (answer.ok) app.go({ kind: 'room', code: answer.value.code });
    else {
      problem.value = answer.sentence;
      offline.value = answer.code === 'unreachable';
    }
  }

  /** One field for every code: a class is asked for first, and whatever is none is a table's. */
  async function knock(code: string) {
    const desk = await deskPart.fetch();
    const known = (await desk?.isClass(code)) ?? false;
    app.go(known ? { kind: 'class', code, part: 'main' } : { kind: 'room', code });
  }

  return (
    <>
      <Bar app={app} home={false} />
      <main class="front">
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
        <NameField
          value={settings.name}
          missing={askName.value && settings.name.trim() === ''}
          onChange={(name) => app.change({ name })}
        />
        <div class="doors">
          <section class="door first">
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
          <section class="door">
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
          </section>
          <section class="door">
            <h2>{FRONT.group.title}</h2>
            <p>{FRONT.group.about}</p>
            <button type="button" class="primary" onClick={() => app.go({ kind: 'prepare' })}>
              {FRONT.group.button}
            </button>
          </section>
        </div>
        <p class="notice" role="alert">
          {problem.value}
        </p>
        {offline.value && (
          <button type="button" onClick={() => app.go({ kind: 'deal', shared: app.freshDeal() })}>
            {PRACTICE.offline}
          </button>
        )}
        <CodeField onCode={(code) => void knock(code)} />
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
