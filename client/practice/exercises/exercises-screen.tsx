// Ten minutes today: one's own choices that cost clearly, asked again, then deals drawn for the habit that costs most.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { CompiledCard, Exercise } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { randomHex } from '../../connection/random.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { Bar } from '../../ui/bar.tsx';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import type { OpenDealDrawer } from '../../workers/drawn-deals.ts';
import { finishRounds } from '../history/finish-rounds.ts';
import { StillLooking } from '../history/still-looking.tsx';
import { dayName, STORAGE_PROBLEMS } from '../history/strings.ts';
import { DecisionForm } from '../question/decision-form.tsx';
import { JudgedChoice } from '../question/judged-choice.tsx';
import { judgedBy } from '../question/strings.ts';
import {
  type ExercisesModel,
  type ExercisesState,
  exercisesModel,
  type JudgedAnswer,
  type Source,
} from './model.ts';
import { decisionWords, drawingWords, drawnForWords, drawnWords, EXERCISES, stepLine } from './strings.ts';
import '../history/history.css';
import '../question/question.css';
import '../../tiles/tiles.css';

interface ExercisesScreenProps {
  readonly app: App;
  readonly startDeepAnalysis: StartDeepAnalysis;
  readonly openDealDrawer: OpenDealDrawer;
  /** The card of deals that are drawn, and what is said where it is not the one chosen. */
  readonly card: CompiledCard;
  readonly instead: string | null;
}

export function ExercisesScreen(props: ExercisesScreenProps) {
  const { app, startDeepAnalysis, card, instead } = props;
  const model = useMemo(() => modelFor(props), [startDeepAnalysis]);
  const unfinished = useSignal(0);
  useEffect(() => {
    void model.open();
    const cancel = finishRounds({
      startDeepAnalysis,
      onLeft(left) {
        unfinished.value = left;
        // A round that is finished may bring a choice; one that is asked already stays.
        void model.refresh();
      },
    });
    return () => {
      cancel();
      model.stop();
    };
  }, [model, startDeepAnalysis, unfinished]);
  const state = model.state.value;
  return (
    <>
      <Bar app={app} home />
      <main class="practice">
        <h1>{EXERCISES.title}</h1>
        <StillLooking left={unfinished.value} />
        {state.is === 'opening' && <p role="status">{EXERCISES.opening}</p>}
        {state.is === 'drawing' && <p role="status">{drawingWords(state.wished, state.tried)}</p>}
        {state.is === 'none' && <Nothing app={app} {...state} />}
        {state.is === 'asking' && (
          <Asking key={state.nth} app={app} model={model} state={state} of={judgedBy(card.name, instead)} />
        )}
      </main>
    </>
  );
}

function modelFor({ startDeepAnalysis, openDealDrawer, card }: ExercisesScreenProps): ExercisesModel {
  return exercisesModel({
    now: Date.now,
    startDeepAnalysis,
    card,
    openDrawer: (request) => openDealDrawer({ ...request, card, seed: randomHex(32) }),
  });
}

function Nothing({
  app,
  nextDue,
  problem,
  isCutShort,
}: ExercisesState & { readonly is: 'none' } & { readonly app: App }) {
  return (
    <>
      {problem && (
        <p class="notice" role="alert">
          {STORAGE_PROBLEMS[problem]}
        </p>
      )}
      {isCutShort && <p class="notice">{EXERCISES.failed}</p>}
      <p>{EXERCISES.none}</p>
      <p>{nextDue === null ? EXERCISES.noneEver : EXERCISES.nextOn(dayName(new Date(nextDue)))}</p>
      <PageLink app={app} route={{ kind: 'racks' }} button>
        {EXERCISES.meanwhile}
      </PageLink>
    </>
  );
}

interface AskingProps {
  readonly app: App;
  readonly model: ExercisesModel;
  readonly state: ExercisesState & { readonly is: 'asking' };
  /** Which card a drawn deal is judged by. */
  readonly of: string;
}

function Asking({ app, model, state, of }: AskingProps) {
  const { source, left, exercise, answer } = state;
  return (
    <>
      <p class="aside">
        {EXERCISES.about} {EXERCISES.left(left)}
      </p>
      <From source={source} exercise={exercise} of={of} />
      {exercise === null ? (
        <>
          <p class="notice">{EXERCISES.missing}</p>
          <button type="button" onClick={() => void model.next()}>
            {EXERCISES.skip}
          </button>
        </>
      ) : (
        <Known exercise={exercise} />
      )}
      {exercise && answer === null && (
        <DecisionForm
          rack={exercise.rack}
          decision={exercise.decision}
          onAnswer={(choice) => model.answer(choice)}
        />
      )}
      {exercise && answer && (
        <>
          <TileRow tiles={exercise.rack} />
          <Judged answer={answer} source={source} />
          <div class="row">
            <button type="button" class="primary" onClick={() => void model.next()}>
              {left > 1 ? EXERCISES.next : EXERCISES.finish}
            </button>
            {source.from === 'own' && (
              <PageLink app={app} route={{ kind: 'past-round', id: source.due.exercise.round }}>
                {EXERCISES.review}
              </PageLink>
            )}
          </div>
        </>
      )}
    </>
  );
}

interface FromProps extends Pick<AskingProps, 'of'> {
  readonly source: Source;
  readonly exercise: Exercise | null;
}

/** The step and where it comes from; for a drawn deal, why this one. */
function From({ source, exercise, of }: FromProps) {
  if (source.from === 'own') {
    const { step, playedAt } = source.due.exercise;
    return <h2>{EXERCISES.from(step, dayName(new Date(playedAt)))}</h2>;
  }
  return (
    <>
      <h2>{exercise && EXERCISES.drawn(exercise.decision.step)}</h2>
      <p class="about">
        {drawnWords(source)} {of}
      </p>
    </>
  );
}

/** Who was East and what had passed, as the seat knew it; the rack follows. */
function Known({ exercise: { record, decision, rack } }: { readonly exercise: Exercise }) {
  const lines = record.steps.flatMap((went) => stepLine(went) ?? []);
  return (
    <>
      <p>
        <b>{decisionWords(decision)}</b> {record.dealer === record.seat && EXERCISES.east}
      </p>
      {lines.length > 0 && (
        <details class="panel">
          <summary>{EXERCISES.before}</summary>
          <ul class="lines">
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
      {decision.kind !== 'pass' && <TileRow tiles={rack} />}
    </>
  );
}

interface JudgedProps {
  readonly answer: JudgedAnswer;
  readonly source: Source;
}

function Judged({ answer: { review, places, isDone, schedule }, source }: JudgedProps) {
  return (
    <div aria-live="polite">
      {!isDone && <p>{EXERCISES.working}</p>}
      {places.map((place) => (
        <JudgedChoice key={place} choice={review.choices[place]!} story={review.story.choices[place]!} />
      ))}
      {schedule && <p>{EXERCISES.comesBack(dayName(new Date(schedule.due)))}</p>}
      {isDone && source.from === 'drawn' && <p class="aside">{drawnForWords(source)}</p>}
    </div>
  );
}
