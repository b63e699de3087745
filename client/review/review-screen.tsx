// The review after a deal: the one thing worth learning first, then every choice, then the next deal.
import { useSignal } from '@preact/signals';
import type { ChoiceReview, Review, Verdict } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { aimsAt } from '../room/aims.ts';
import { Invite } from '../room/invite.tsx';
import { ReadyPanel } from '../room/ready-panel.tsx';
import type { Room, Seated } from '../room/room.ts';
import { SeatPicker } from '../room/seat-picker.tsx';
import { LOBBY, ROOM } from '../room/strings.ts';
import { VERDICTS, verdictOf } from '../room/verdicts.ts';
import { ChoiceStrip } from './choice-strip.tsx';
import { DealCheckPanel } from './deal-check.tsx';
import { AnalysisProgressBar } from './deep-analysis.tsx';
import { NumberChoice } from './number-choice.tsx';
import { OpenRacks } from './open-racks.tsx';
import { PassChoice } from './pass-choice.tsx';
import { earlierReview, NotAgain, PlayAgain, SideBySide, sharedDealOf } from './play-again.tsx';
import { ProgressChart } from './progress-chart.tsx';
import { choiceName, REVIEW, startToEnd } from './strings.ts';

interface ReviewScreenProps {
  readonly app: App;
  readonly room: Room;
  readonly seated: Seated;
}

export function ReviewScreen({ app, room, seated }: ReviewScreenProps) {
  const { review, analysisRunning, notice, home, commitment } = room.state.value;
  const { table } = seated;
  const shared = sharedDealOf(seated, home);
  const first = shared && review ? earlierReview(app, shared, room, review) : null;
  return (
    <main class="review">
      {review ? (
        <Lesson review={review} />
      ) : (
        <header class="lesson">
          <h1>{REVIEW.title}</h1>
          <p role="status">{REVIEW.working}</p>
        </header>
      )}
      <ReadyPanel room={room} table={table} label={table.controls ? REVIEW.nextInClass : REVIEW.next} />
      {notice && (
        <p class="notice" role="alert">
          {notice}
        </p>
      )}
      {review && analysisRunning && <AnalysisProgressBar review={review} />}
      {review && <Choices review={review} room={room} seated={seated} />}
      {review && <ProgressChart review={review} />}
      {first && review && <SideBySide first={first} now={review} />}
      {shared ? <PlayAgain app={app} shared={shared} /> : <NotAgain view={seated.view} />}
      <OpenRacks seated={seated} />
      <DealCheckPanel seated={seated} kept={commitment} />
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

function Lesson({ review }: { readonly review: Review }) {
  return (
    <header class="lesson">
      <h1>{REVIEW.title}</h1>
      <p class="lesson-text">{review.lesson}</p>
      <p>
        {startToEnd(review)} <span class="aside">{REVIEW.private}</span>
      </p>
    </header>
  );
}

interface ChoicesProps {
  readonly review: Review;
  readonly room: Room;
  readonly seated: Seated;
}

function Choices({ review, room, seated }: ChoicesProps) {
  // Until the player opens another, the costliest choice is open, whichever a deeper look finds that to be.
  const opened = useSignal<number | null>(null);
  const chosen = opened.value ?? costliest(review);
  const choice = review.choices[chosen];
  return (
    <section class="choices" aria-labelledby="choices-title">
      <h2 id="choices-title">{REVIEW.strip}</h2>
      <ChoiceStrip
        choices={review.choices}
        chosen={chosen}
        onChoose={(index) => {
          opened.value = index;
        }}
      />
      <VerdictLegend />
      {choice && (
        <article class="choice-detail" aria-live="off">
          <h3>
            {choiceName(choice)}: <span class="verdict-name">{VERDICTS[verdictOf(choice)].name}</span>
          </h3>
          {choice.by === 'stand-in' && <p class="aside">{REVIEW.standIn}</p>}
          {choice.kind === 'pass' ? (
            <PassChoice
              choice={choice}
              review={review}
              seated={seated}
              aim={aimsAt(room.state.value.aims, seated.table.round, choice.step)}
            />
          ) : (
            <NumberChoice choice={choice} />
          )}
        </article>
      )}
      <details class="panel">
        <summary>{REVIEW.method}</summary>
        <p>{review.method}</p>
      </details>
    </section>
  );
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

/** Verdicts by how much there is to look at, further apart than any loss. */
const RANKS: Readonly<Record<Verdict, number>> = {
  costly: 200,
  'a-little-worse': 100,
  best: -100,
  'just-as-good': -100,
  'cant-say': -200,
};

/** The choice that cost most is open first; it is the one the lesson speaks of. */
function costliest({ choices }: Review): number {
  const cost = ({ loss, analysis }: ChoiceReview) =>
    analysis.depth === 'quick' ? loss : RANKS[analysis.verdict] + (analysis.loss?.value ?? 0);
  return choices.reduce((best, choice, index) => (cost(choice) > cost(choices[best]!) ? index : best), 0);
}
