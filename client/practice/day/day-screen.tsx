// The deal of today and those of the days before, with the reviews of those that were played here.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { RoundSummary } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { listRounds } from '../../storage/history/rounds.ts';
import { cardForTables, listOwnCards } from '../../storage/own-cards.ts';
import { forgetPageRound } from '../../storage/page-round.ts';
import { Bar } from '../../ui/bar.tsx';
import { dateAt, daysBefore, noonOf } from '../dates.ts';
import { dayName, findings } from '../history/strings.ts';
import { DAY } from './strings.ts';
import '../history/history.css';

/** Days shown at first, and each time somebody asks for more. */
const AT_ONCE = 7;

export function DayScreen({ app }: { readonly app: App }) {
  const played = useSignal<ReadonlyMap<string, RoundSummary>>(new Map());
  const count = useSignal(AT_ONCE);
  const today = dateAt(Date.now());
  useEffect(() => {
    // A browser that stores nothing has played nothing.
    void listRounds().then((listed) => {
      const days = listed.ok ? listed.value.filter(({ place }) => place === 'day') : [];
      // The latest comes first in the list and stays in the map.
      played.value = new Map(days.toReversed().map((round) => [round.table, round]));
    });
  }, [played]);
  const { card } = app.settings.value;
  // A card without a hand yet plays as the house card does.
  const isPlayable = cardForTables(lastingStorage, card) !== null;
  const own = listOwnCards(lastingStorage).find(({ key }) => key === card);
  const cardName = isPlayable && own ? own.name : null;
  const todays = played.value.get(today);
  return (
    <>
      <Bar app={app} home />
      <main class="practice">
        <h1>{DAY.title}</h1>
        <p>{DAY.about}</p>
        <p class="about">{DAY.card(cardName)}</p>
        <section class="today">
          <h2>{dayName(noonOf(today))}</h2>
          <PageLink app={app} route={{ kind: 'day', date: today }} before={todays && startAnew} button>
            {todays ? DAY.again : DAY.today}
          </PageLink>
          {todays && <Review app={app} round={todays} />}
        </section>
        <section class="round-group">
          <h2>{DAY.earlier}</h2>
          <ul>
            {daysBefore(today, count.value).map((date) => (
              <DayRow key={date} app={app} date={date} round={played.value.get(date)} />
            ))}
          </ul>
        </section>
        <button
          type="button"
          onClick={() => {
            count.value += AT_ONCE;
          }}
        >
          {DAY.more}
        </button>
      </main>
    </>
  );
}

/** A day that was played to its end begins again; one that was left in the middle goes on. */
function startAnew() {
  forgetPageRound(lastingStorage);
}

/** Above the table of a day's deal. */
export function DayNote({ app, date }: { readonly app: App; readonly date: string }) {
  return (
    <p class="past-round">
      {DAY.above(dayName(noonOf(date)))}{' '}
      <PageLink app={app} route={{ kind: 'days' }}>
        {DAY.all}
      </PageLink>
    </p>
  );
}

interface DayRowProps {
  readonly app: App;
  readonly date: string;
  readonly round: RoundSummary | undefined;
}

function DayRow({ app, date, round }: DayRowProps) {
  return (
    <li class="round-row">
      <PageLink app={app} route={{ kind: 'day', date }} before={round && startAnew}>
        <span class="round-name">{dayName(noonOf(date))}</span>
        <span class="spoken">, </span>
        <span class="round-facts">{round ? DAY.again : DAY.notPlayed}</span>
      </PageLink>
      {round && <Review app={app} round={round} />}
    </li>
  );
}

function Review({ app, round }: { readonly app: App; readonly round: RoundSummary }) {
  return (
    <PageLink app={app} route={{ kind: 'past-round', id: round.id }}>
      {DAY.review(findings(round))}
    </PageLink>
  );
}
