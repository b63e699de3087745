// Ten minutes today: one's own choices that cost clearly, asked again with the same tiles.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Exercise } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { TileRow } from '../../tiles/tile-row.tsx';
import { Bar } from '../../ui/bar.tsx';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { finishRounds } from '../history/finish-rounds.ts';
import { StillLooking } from '../history/still-looking.tsx';
import { dayName, STORAGE_PROBLEMS } from '../history/strings.ts';
import { DecisionForm } from '../question/decision-form.tsx';
import { JudgedChoice } from '../question/judged-choice.tsx';
import { type ExercisesModel, type ExercisesState, exercisesModel, type JudgedAnswer } from './model.ts';
import { decisionWords, EXERCISES, stepLine } from './strings.ts';
import '../history/history.css';
import '../question/question.css';
import '../../tiles/tiles.css';

interface ExercisesScreenProps {
  readonly app: App;
  readonly startDeepAnalysis: StartDeepAnalysis;
}

export function ExercisesScreen({ app, startDeepAnalysis }: ExercisesScreenProps) {
  const model = useMemo(() => exercisesModel({ now: Date.now, startDeepAnalysis }), [startDeepAnalysis]);
  const unfinished = useSignal(0);
  useEffect(() => {
    void model.open();
    const cancel = finishRounds({
      startDeepAnalysis,
      onLeft(left) {
        unfinished.value = left;
        // A round that is finished may bring a choice; one that is asked already stays.
        if (model.state.peek().is === 'none') void model.open();
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
        {state.is === 'none' && <Nothing app={app} {...state} />}
        {state.is === 'asking' && (
          <Asking key={state.due.exercise.id} app={app} model={model} state={state} />
        )}
      </main>
    </>
  );
}

function Nothing({
  app,
  nextDue,
  problem,
}: ExercisesState & { readonly is: 'none' } & { readonly app: App }) {
  return (
    <>
      {problem && (
        <p class="notice" role="alert">
          {STORAGE_PROBLEMS[problem]}
        </p>
      )}
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
}

function Asking({ app, model, state }: AskingProps) {
  const { due, left, exercise, answer } = state;
  const { step, playedAt, round } = due.exercise;
  return (
    <>
      <p class="aside">
        {EXERCISES.about} {EXERCISES.left(left)}
      </p>
      <h2>{EXERCISES.from(step, dayName(new Date(playedAt)))}</h2>
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
          <Judged answer={answer} />
          <div class="row">
            <button type="button" class="primary" onClick={() => void model.next()}>
              {left > 1 ? EXERCISES.next : EXERCISES.finish}
            </button>
            <PageLink app={app} route={{ kind: 'past-round', id: round }}>
              {EXERCISES.review}
            </PageLink>
          </div>
        </>
      )}
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

function Judged({ answer: { review, places, schedule } }: { readonly answer: JudgedAnswer }) {
  return (
    <div aria-live="polite">
      {schedule === null && <p>{EXERCISES.working}</p>}
      {places.map((place) => (
        <JudgedChoice key={place} choice={review.choices[place]!} story={review.story.choices[place]!} />
      ))}
      {schedule && <p>{EXERCISES.comesBack(dayName(new Date(schedule.due)))}</p>}
    </div>
  );
}
