// The review after a deal: the one thing worth learning first, then every choice, then the next deal.
import { useSignal } from '@preact/signals';
import type { Ref } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { type Four, forFour, type Review, type Table } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { dealKey } from '../app/routes/deal-link.ts';
import { namedAt, wasHelped } from '../coach/helped.ts';
import { COACH } from '../coach/strings.ts';
import { aimsAt } from '../room/aims.ts';
import { Invite } from '../room/invite.tsx';
import { notReady, ReadyPanel } from '../room/ready-panel.tsx';
import type { Room, Seated } from '../room/room.ts';
import { neighborNames } from '../room/seat-names.ts';
import { SeatPicker } from '../room/seat-picker.tsx';
import { LOBBY, ROOM, WAYS } from '../room/strings.ts';
import { TableTalk } from '../room/table-talk.tsx';
import { VERDICTS } from '../room/verdicts.ts';
import { WaysPanel } from '../room/ways-panel.tsx';
import { lastingStorage } from '../storage/browser-storage.ts';
import { wasFinishedHere } from '../storage/went-on.ts';
import { useDeafAtFirst } from '../ui/second-tap.ts';
import { AnalysisProgressBar } from './choice-sentences.tsx';
import { ChoiceStrip } from './choice-strip.tsx';
import { DealCheckPanel } from './deal-check.tsx';
import { HandLine } from './hand-line.tsx';
import { LuckAndChoices } from './luck-and-choices.tsx';
import { MethodPanel } from './method-panel.tsx';
import { namedReview } from './named-review.ts';
import { NumberChoice } from './number-choice.tsx';
import { PassChoice, PassPair } from './pass-choice.tsx';
import { NotAgain, PlayAgain, SideBySide, sharedDealOf } from './play-again.tsx';
import { ProgressChart } from './progress-chart.tsx';
import { ReviewTools } from './review-tools.tsx';
import { RoundWalk } from './round-walk.tsx';
import { choiceName, coachedWords, nextWords, REVIEW, showStep } from './strings.ts';

interface ReviewScreenProps {
  readonly app: App;
  readonly room: Room;
  readonly seated: Seated;
}

export function ReviewScreen({ app, room, seated }: ReviewScreenProps) {
  const { review: made, analysisRunning, notice, home, commitment } = room.state.value;
  const { table, you } = seated;
  const review = useMemo(() => made && namedReview(made, neighborNames(table, you)), [made, table, you]);
  const title = useRef<HTMLHeadingElement>(null);
  const isReady = review !== null;
  // It takes the place of a table that may have been scrolled far down; what is to be read first stands at the top.
  useLayoutEffect(() => window.scrollTo(0, 0), []);
  // The button that ended the deal is gone, and so is the heading that stood there until the review came.
  useEffect(() => {
    if (document.activeElement === document.body) title.current?.focus({ preventScroll: true });
  }, [isReady]);
  const shared = sharedDealOf(seated, home, app.route.value);
  const first =
    shared && review ? app.reviewBefore(dealKey(shared), { room, isPast: home === 'past', review }) : null;
  // The second tap on the last pass would land on what has come to its place.
  const { isDeaf, onClickCapture } = useDeafAtFirst('review', true);
  return (
    <main class="review" aria-disabled={isDeaf} {...{ onClickCapture }}>
      {review ? (
        <Lesson title={title} review={review} room={room} seated={seated} />
      ) : (
        <header class="lesson">
          <h1 ref={title} tabIndex={-1}>
            {REVIEW.title}
          </h1>
          <p role="status">{REVIEW.working}</p>
        </header>
      )}
      {review && <ReviewTools review={review} />}
      {home !== 'past' && !table.controls?.amongFriends && (
        <ReadyPanel room={room} table={table} label={nextWords(home, table, app.route.value)} />
      )}
      <TableTalk room={room} table={table} waiting={notReady(table)} />
      {notice && (
        <p class="notice" role="alert">
          {notice}
        </p>
      )}
      {home === 'server' && wasFinishedHere(lastingStorage, table.code, table.round) && (
        <p class="aside">{REVIEW.finishedHere}</p>
      )}
      {review && analysisRunning && <AnalysisProgressBar review={review} />}
      {review && <Choices review={review} room={room} seated={seated} />}
      {review && <ProgressChart review={review} />}
      {review?.ledger && <LuckAndChoices ledger={review.ledger} sentences={review.story.ledger} />}
      {first && review && <SideBySide first={first} now={review} />}
      {shared ? (
        <PlayAgain app={app} shared={shared} botNames={botNamesAt(table)} />
      ) : (
        <NotAgain view={seated.view} />
      )}
      <RoundWalk seated={seated} ledger={review?.ledger ?? null} />
      <DealCheckPanel seated={seated} kept={home === 'page' ? null : commitment} />
      {home !== 'past' && !table.controls && (
        <details class="panel">
          <summary>{WAYS.title}</summary>
          <WaysPanel room={room} table={table} />
        </details>
      )}
      {home === 'server' && !table.controls && (
        <details class="panel">
          <summary>{LOBBY.seats}</summary>
          <SeatPicker app={app} room={room} table={table} />
          <Invite link={app.linkTo({ kind: 'room', code: table.code })} code={table.code} />
          <button type="button" onClick={() => room.act({ kind: 'leave' })}>
            {ROOM.leave}
          </button>
        </details>
      )}
    </main>
  );
}

interface LessonProps extends ChoicesProps {
  readonly title: Ref<HTMLHeadingElement>;
}

function Lesson({ title, review, room, seated }: LessonProps) {
  const choice = review.choices[review.story.opened];
  return (
    <header class="lesson">
      <h1 ref={title} tabIndex={-1}>
        {REVIEW.title}
      </h1>
      {choice?.kind === 'pass' && <PassPair choice={choice} />}
      <p class="lesson-text">{review.story.headline.join(' ')}</p>
      <HandLine review={review} room={room} seated={seated} />
      <p class="aside">{REVIEW.private}</p>
    </header>
  );
}

interface ChoicesProps {
  readonly review: Review;
  readonly room: Room;
  readonly seated: Seated;
}

function Choices({ review, room, seated }: ChoicesProps) {
  const { chosen, choose, detail } = useOpenStep(review.story.opened);
  const meant = review.choices[review.story.opened];
  const choice = review.choices[chosen];
  const story = review.story.choices[chosen];
  const { helped, aims } = room.state.value;
  const { round } = seated.table;
  const coached = choice?.kind === 'pass' ? namedAt(helped, round, choice.step) : null;
  return (
    <section class="choices" aria-labelledby="choices-title">
      <h2 id="choices-title">{REVIEW.strip}</h2>
      <ChoiceStrip review={review} chosen={chosen} onChoose={choose} />
      <VerdictLegend />
      {meant && review.story.opened !== chosen && (
        <button type="button" onClick={() => choose(review.story.opened)}>
          {showStep(choiceName(meant))}
        </button>
      )}
      {choice && story && (
        <article class="choice-detail" aria-live="off" ref={detail}>
          <h3>
            {choiceName(choice)}: <span class="verdict-name">{VERDICTS[story.verdict].name}</span>
          </h3>
          {wasHelped(helped, round, choice.step) && (
            <p class="aside">
              {COACH.helped} {choice.kind === 'pass' && coached && coachedWords(choice, coached)}
            </p>
          )}
          {choice.by === 'stand-in' && <p class="aside">{REVIEW.standIn}</p>}
          {choice.kind === 'pass' ? (
            <PassChoice
              choice={choice}
              story={story}
              review={review}
              aim={aimsAt(aims, round, choice.step)}
              coached={coached}
            />
          ) : (
            <NumberChoice choice={choice} story={story} />
          )}
        </article>
      )}
      <MethodPanel review={review} />
    </section>
  );
}

/** By which somebody comes to the details where they are in sight without scrolling. */
const COMING = ['focusin', 'pointerdown', 'keydown'] as const;

/**
 * Which step is open: the one that the top speaks of, as long as nobody has scrolled to the details, touched them or come
 * there by keyboard. From then on nothing swaps while it is read: a step stays open until the player opens another.
 */
function useOpenStep(meant: number) {
  const kept = useSignal<number | null>(null);
  const detail = useRef<HTMLElement>(null);
  const isKept = kept.value !== null;
  useEffect(() => {
    if (isKept) return;
    const keep = () => {
      kept.value = meant;
    };
    const onScroll = () => {
      // A step that was tapped scrolls as well, and this may hear of it before it is taken away.
      if (kept.value !== null) return;
      const top = detail.current?.getBoundingClientRect().top ?? Number.POSITIVE_INFINITY;
      if (window.scrollY > 0 && top < window.innerHeight) keep();
    };
    const shown = detail.current;
    window.addEventListener('scroll', onScroll, { passive: true });
    for (const event of COMING) shown?.addEventListener(event, keep);
    return () => {
      window.removeEventListener('scroll', onScroll);
      for (const event of COMING) shown?.removeEventListener(event, keep);
    };
  }, [meant, isKept]);
  const choose = (index: number) => {
    kept.value = index;
  };
  return { chosen: kept.value ?? meant, choose, detail };
}

function VerdictLegend() {
  return (
    <details class="verdict-legend">
      <summary>{REVIEW.legend}</summary>
      <dl>
        {Object.values(VERDICTS).map(({ name, about }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{about}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

function botNamesAt({ seats }: Table): Four<string> {
  return forFour((seat) => {
    const info = seats[seat];
    return info.kind === 'bot' ? info.name : '';
  });
}
