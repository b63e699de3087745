// Ten racks, one question: what is asked and of which racks, then rack by rack the answer and why.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import {
  type CompiledCard,
  canBeDrawn,
  createSwarKernel,
  habitsOf,
  type Kernel,
  type MistakeCategory,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { randomHex } from '../../connection/random.ts';
import { listRounds } from '../../storage/history/rounds.ts';
import { RackPicker } from '../../tiles/rack-picker.tsx';
import { TileRow } from '../../tiles/tile-row.tsx';
import { Bar } from '../../ui/bar.tsx';
import type { OpenDealDrawer } from '../../workers/drawn-deals.ts';
import { judgedBy, QUESTION } from '../question/strings.ts';
import { Choosing } from './choosing.tsx';
import { Done } from './done.tsx';
import { type RacksModel, type RacksState, racksModel } from './model.ts';
import { RackAnswerView } from './rack-answer.tsx';
import { chooseSections, chooseTiles, RACKS, rackTitle } from './strings.ts';
import '../history/history.css';
import '../question/question.css';
import '../../tiles/tiles.css';

interface RacksProps {
  readonly app: App;
  /** The card that answers are judged by. */
  readonly card: CompiledCard;
  /** Said where it is not the card that was chosen; null where it is. */
  readonly instead: string | null;
  readonly openDealDrawer: OpenDealDrawer;
}

export function RacksScreen({ app, card, instead, openDealDrawer }: RacksProps) {
  const kernel = useMemo(() => createSwarKernel(card), []);
  const model = useMemo(
    () =>
      racksModel({
        kernel,
        newSeed: () => randomHex(32),
        openDrawer: (request) => openDealDrawer({ ...request, card, seed: randomHex(32) }),
      }),
    [kernel],
  );
  const habit = useSignal<MistakeCategory | null>(null);
  useEffect(() => {
    void listRounds().then((listed) => {
      const named = listed.ok ? habitsOf(listed.value).named : [];
      habit.value = named.find(({ kind }) => canBeDrawn(kind, true))?.kind ?? null;
    });
    return () => model.close();
  }, [model, habit]);
  const state = model.state.value;
  return (
    <>
      <Bar app={app} home />
      <main class="practice">
        <h1>{RACKS.title}</h1>
        <p class="about">{judgedBy(card.name, instead)}</p>
        {state.is === 'choosing' && <Choosing model={model} problem={state.problem} habit={habit.value} />}
        {state.is === 'drawing' && (
          <>
            <p role="status">{RACKS.drawing(state.tried)}</p>
            <button type="button" onClick={() => model.stop()}>
              {RACKS.stop}
            </button>
          </>
        )}
        {state.is === 'asking' && <Asking key={state.nth} model={model} kernel={kernel} state={state} />}
        {state.is === 'done' && <Done model={model} state={state} />}
      </main>
    </>
  );
}

interface AskingProps {
  readonly model: RacksModel;
  readonly kernel: Kernel;
  readonly state: RacksState & { readonly is: 'asking' };
}

function Asking({ model, kernel, state }: AskingProps) {
  const { nth, of, asked, question, isByChance, answer } = state;
  const tiles = useSignal<readonly number[]>([]);
  const sections = useSignal<readonly string[]>([]);
  const missing =
    question === 'pass' ? chooseTiles(tiles.value.length) : chooseSections(sections.value.length);
  const submit = () => {
    if (missing !== '') return;
    if (question === 'sections') model.nameSections(sections.value);
    else model.pass(tiles.value.map((place) => asked.rack[place]!));
  };
  return (
    <>
      <h2>{rackTitle(nth, of)}</h2>
      <p>
        <b>{RACKS.questions[question]}</b> {asked.isEast ? RACKS.east : RACKS.notEast}
      </p>
      {isByChance && <p class="aside">{RACKS.byChance}</p>}
      {question === 'pass' && answer === null ? (
        <RackPicker
          rack={asked.rack}
          chosen={tiles.value}
          onChange={(chosen) => {
            tiles.value = chosen;
          }}
        />
      ) : (
        <TileRow tiles={asked.rack} marked={tiles.value.map((place) => asked.rack[place]!)} />
      )}
      {question === 'sections' && answer === null && (
        <SectionPicker
          kernel={kernel}
          chosen={sections.value}
          onChange={(chosen) => {
            sections.value = chosen;
          }}
        />
      )}
      {answer === null ? (
        <>
          <p role="status">{missing}</p>
          <button type="button" class="primary" aria-disabled={missing !== ''} onClick={submit}>
            {QUESTION.answer}
          </button>
        </>
      ) : (
        <>
          <div role="status">
            <RackAnswerView answer={answer} />
          </div>
          <div class="row">
            <button type="button" class="primary" onClick={() => model.next()}>
              {nth < of ? RACKS.next : RACKS.finish}
            </button>
            <button type="button" onClick={() => model.stop()}>
              {RACKS.stop}
            </button>
          </div>
        </>
      )}
    </>
  );
}

interface SectionPickerProps {
  readonly kernel: Kernel;
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
}

function SectionPicker({ kernel, chosen, onChange }: SectionPickerProps) {
  return (
    <div class="row">
      {kernel.card.sections.map(({ id, name }) => (
        <label key={id} class="choice pill">
          <input
            type="checkbox"
            checked={chosen.includes(id)}
            onChange={() =>
              onChange(chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id])
            }
          />
          <span>{name}</span>
        </label>
      ))}
    </div>
  );
}
