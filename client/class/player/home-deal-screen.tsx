// A deal of a class that a player plays again at home: a table in the page with the same tiles and the same bots.
import { useMemo, useRef } from 'preact/hooks';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { PublishedTables } from '../../room/screen.ts';
import { lastingStorage, tabStorage } from '../../storage/browser-storage.ts';
import { homeDeal, noteHomeAnswers, readHomeAnswers } from '../../storage/taken-home.ts';
import { Bar } from '../../ui/bar.tsx';
import { HOME } from './strings.ts';

interface HomeDealScreenProps {
  readonly app: App;
  /** Code of the table at which it was played in the class, and the number of that round. */
  readonly room: string;
  readonly round: number;
  readonly tables: PublishedTables;
}

export function HomeDealScreen({ app, room, round, tables }: HomeDealScreenProps) {
  const found = useMemo(() => homeDeal(lastingStorage, room, round), [room, round]);
  const isOver = useRef(false);
  if (found === null) {
    return (
      <>
        <Bar app={app} home />
        <main class="quiet">
          <p role="alert">{HOME.missing}</p>
          <RoundsLink app={app} />
        </main>
      </>
    );
  }
  const { taken, place, key } = found;
  const { title, task } = taken.deals[place]!;
  const { RoomScreen, publishedRoom } = tables;
  const here = { room, round };
  return (
    <RoomScreen
      app={app}
      open={() =>
        publishedRoom({
          drill: taken,
          place,
          key,
          keptAs: 'page',
          name: app.settings.peek().name,
          // A phone may drop the tab in the middle of a deal.
          answers: readHomeAnswers(tabStorage, here),
          store(answers) {
            if (!isOver.current) noteHomeAnswers(tabStorage, here, answers);
          },
          onClosed() {
            isOver.current = true;
            noteHomeAnswers(tabStorage, here, null);
          },
          onNext: () => app.go({ kind: 'rounds' }),
        })
      }
      guide={() => (
        <section class="deal-texts" aria-label={title ?? taken.title}>
          <p class="aside">
            {taken.title}
            {title && `: ${title}`}. {HOME.about} <RoundsLink app={app} />
          </p>
          {task && <p class="task">{task}</p>}
        </section>
      )}
    />
  );
}

function RoundsLink({ app }: { readonly app: App }) {
  return (
    <PageLink app={app} route={{ kind: 'rounds' }}>
      {HOME.rounds}
    </PageLink>
  );
}
