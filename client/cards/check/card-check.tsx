// Is it a good card? The check with its progress, and what it found.
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type CardFile, type CardSurvey, SURVEY_DEALS } from '../../../shared-engine/index.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { startSurvey } from '../../workers/card-survey.ts';
import { handNames, playable } from '../own/reports.ts';
import { CHECK } from './strings.ts';

interface CardCheckProps {
  readonly card: CardFile;
  /** Why there is nothing to check; null where there is. */
  readonly whyNot: string | null;
}

type State =
  | { readonly is: 'idle' }
  | { readonly is: 'failed' }
  | { readonly is: 'running'; readonly done: number }
  | { readonly is: 'done'; readonly survey: CardSurvey; readonly of: CardFile; readonly leftOut: number };

export function CardCheck({ card, whyNot }: CardCheckProps) {
  const state = useSignal<State>({ is: 'idle' });
  const cancel = useRef(() => {});
  useEffect(() => () => cancel.current(), []);

  function run() {
    const part = playable(card);
    if (part === null) return;
    const leftOut = card.patterns.length - part.patterns.length;
    state.value = { is: 'running', done: 0 };
    cancel.current = startSurvey(part, (step) => {
      if (step === 'failed') state.value = { is: 'failed' };
      else if (step.kind === 'racks') state.value = { is: 'running', done: step.done };
      else state.value = { is: 'done', survey: step.survey, of: part, leftOut };
    });
  }

  const now = state.value;
  return (
    <section class="card-check" aria-labelledby="check-title">
      <h2 id="check-title">{CHECK.title}</h2>
      <p class="about">{whyNot ?? CHECK.about}</p>
      {now.is === 'running' ? (
        <div class="row">
          <progress max={SURVEY_DEALS} value={now.done} aria-label={CHECK.title} />
          <span>{CHECK.progress(now.done, SURVEY_DEALS)}</span>
          <button
            type="button"
            onClick={() => {
              cancel.current();
              state.value = { is: 'idle' };
            }}
          >
            {CHECK.stop}
          </button>
        </div>
      ) : (
        <div class="row">
          <button type="button" aria-disabled={whyNot !== null} onClick={run}>
            {now.is === 'done' ? CHECK.again : CHECK.run}
          </button>
        </div>
      )}
      <div role="status">
        {now.is === 'failed' && <p>{CHECK.failed}</p>}
        {now.is === 'done' && <Found survey={now.survey} card={now.of} leftOut={now.leftOut} />}
      </div>
    </section>
  );
}

interface FoundProps {
  readonly survey: CardSurvey;
  readonly card: CardFile;
  readonly leftOut: number;
}

function Found({ survey, card, leftOut }: FoundProps) {
  const named = handNames(card);
  return (
    <>
      <p>{CHECK.hands(survey.patterns.length, survey.hands)}</p>
      {leftOut > 0 && <p>{CHECK.notReady(leftOut)}</p>}
      <p>{CHECK.toGo(survey.meanToGo)}</p>
      {survey.twice.length === 0 ? (
        <p>{CHECK.noneTwice}</p>
      ) : (
        <ul>
          {survey.twice.map(({ one, other, hands }) => (
            <li key={`${one}-${other}`}>{CHECK.twice(named(one), named(other), hands)}</li>
          ))}
        </ul>
      )}
      <h3>{CHECK.sections}</h3>
      <ul class="section-bars">
        {card.sections.map(({ id, name }, section) => {
          const percent = survey.nearest[section] ?? 0;
          return (
            <li key={id}>
              <span>{name}</span>
              <meter min={0} max={100} value={percent} aria-label={name} />
              <span>
                {`${Math.round(percent)} %`}
                {percent < 4 && ` · ${CHECK.seldom}`}
                {percent > 25 && ` · ${CHECK.often}`}
              </span>
            </li>
          );
        })}
      </ul>
      <p>
        {CHECK.most} <TileRow tiles={survey.wanted.slice(0, 6).map(({ face }) => face)} />
      </p>
      <p>
        {CHECK.least} <TileRow tiles={survey.wanted.slice(-6).map(({ face }) => face)} />
      </p>
      <details>
        <summary>{CHECK.points}</summary>
        <p class="about">{CHECK.pointsAbout}</p>
        <table>
          <thead>
            <tr>
              <th scope="col">{CHECK.hand}</th>
              <th scope="col">{CHECK.own}</th>
              <th scope="col">{CHECK.measured}</th>
            </tr>
          </thead>
          <tbody>
            {survey.patterns.map(({ id, points, measuredPoints }) => (
              <tr key={id}>
                <th scope="row">{named(id)}</th>
                <td>{points}</td>
                <td>{measuredPoints}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <p class="about">{CHECK.trust}</p>
    </>
  );
}
