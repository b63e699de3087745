// From which choice the class goes on, where it plays one line: one of the players' own, or another of the teacher's.
import { useSignal } from '@preact/signals';
import {
  type AnswerChoice,
  type Dashboard,
  type Face,
  type GuidedDeal,
  MOVES,
} from '../../shared-engine/index.ts';
import { optionName } from '../room/option-names.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { Tile } from '../tiles/tile.tsx';
import { sentenceList, tileName } from '../tiles/tile-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import type { Act } from './action.ts';
import { LINE, madeBy, numbered, stillToChoose } from './guided-strings.ts';

interface LinePanelProps {
  readonly desk: Dashboard;
  readonly line: GuidedDeal;
  readonly act: Act;
}

export function LinePanel({ desk, line, act }: LinePanelProps) {
  return (
    <section class="line" aria-labelledby="line-title">
      <h2 id="line-title">{LINE.title}</h2>
      <p class="aside">{LINE.about}</p>
      {line.step === null ? (
        <p role="status">{LINE.closed}</p>
      ) : line.waiting > 0 || desk.players.length === 0 ? (
        <Waiting desk={desk} step={STEP_NAMES[line.step]} act={act} />
      ) : (
        <Choosing
          key={`${desk.dealt} ${line.stepIndex}`}
          line={line}
          names={desk.terms.names}
          step={line.step}
          onChoose={(choice) => act({ kind: 'advance', stepIndex: line.stepIndex, choice })}
        />
      )}
    </section>
  );
}

interface WaitingProps {
  readonly desk: Dashboard;
  readonly step: string;
  readonly act: Act;
}

function Waiting({ desk, step, act }: WaitingProps) {
  const open = stillToChoose(desk);
  const away = open.filter(({ present, standIn }) => !present && !standIn);
  const names = sentenceList(open.map(({ name }) => name));
  const words = open.every(({ held }) => held) ? LINE.held(step) : LINE.waitFor(step, names);
  return (
    <>
      <p role="status">{desk.players.length === 0 ? LINE.nobody : words}</p>
      {away.length > 0 && (
        <button
          type="button"
          onClick={() => {
            for (const { id } of away) act({ kind: 'stand-in', player: id, on: true });
          }}
        >
          {LINE.botsForAway}
        </button>
      )}
    </>
  );
}

interface ChoosingProps {
  readonly line: GuidedDeal;
  /** Whether single players may be shown. */
  readonly names: boolean;
  readonly step: NonNullable<GuidedDeal['step']>;
  readonly onChoose: (choice: AnswerChoice | null) => void;
}

interface Option {
  readonly choice: AnswerChoice;
  readonly players: number;
}

const NUMBERS = { vote: [1, 0], 'courtesy-ask': [0, 1, 2, 3] } as const;

function Choosing({ line, names, step, onChoose }: ChoosingProps) {
  const picked = useSignal<string | null>(null);
  const places = useSignal<readonly number[]>([]);
  const unseen = useSignal(0);
  const problem = useSignal<string | null>(null);
  const passes = step !== 'vote' && step !== 'courtesy-ask';
  if (passes && line.needed === 0) {
    return (
      <>
        <p>{LINE.nothing}</p>
        <button type="button" class="primary" onClick={() => onChoose(null)}>
          {LINE.goOn}
        </button>
      </>
    );
  }
  const options: readonly Option[] = passes
    ? line.chosen
    : NUMBERS[step].map((number) => withCount(line, numbered(step, number)));
  const keys = options.map(({ choice }) => JSON.stringify(choice));
  // What most chose stands picked until the teacher picks.
  const most = Math.max(...options.map(({ players }) => players));
  const at = picked.value ?? keys[options.findIndex(({ players }) => players === most)] ?? OWN;
  const own = passes
    ? {
        kind: 'seal' as const,
        step,
        tiles: places.value.map((place) => line.rack[place]!),
        blind: unseen.value,
      }
    : null;
  const choice = at === OWN ? own : (options[keys.indexOf(at)]?.choice ?? null);
  return (
    <>
      <fieldset class="line-options">
        <legend>{LINE.goOnFrom(STEP_NAMES[step])}</legend>
        {options.map((option, place) => (
          <label key={keys[place]} class="choice">
            <input
              type="radio"
              name="line"
              checked={at === keys[place]}
              onChange={() => {
                picked.value = keys[place]!;
              }}
            />
            <Chosen option={option} />
          </label>
        ))}
        {passes && (
          <label class="choice">
            <input
              type="radio"
              name="line"
              checked={at === OWN}
              onChange={() => {
                picked.value = OWN;
              }}
            />
            {LINE.another}
          </label>
        )}
      </fieldset>
      {passes && at === OWN && (
        <RackPicker
          rack={line.rack}
          places={places.value}
          onPlaces={(next) => {
            places.value = next;
          }}
        />
      )}
      {passes && at === OWN && MOVES[step].blind && (
        <div class="field">
          <label for="line-unseen">{LINE.unseen}</label>
          <select
            id="line-unseen"
            value={unseen.value}
            onChange={(event) => {
              unseen.value = Number(event.currentTarget.value);
            }}
          >
            {[0, 1, 2, 3].map((count) => (
              <option key={count} value={count}>
                {count}
              </option>
            ))}
          </select>
        </div>
      )}
      {!names && <p class="aside">{LINE.kept}</p>}
      <p class="notice" role="alert">
        {problem.value}
      </p>
      <button
        type="button"
        class="primary"
        onClick={() => {
          const picks = own !== null && at === OWN ? own.tiles.length + own.blind : line.needed;
          problem.value =
            picks === line.needed ? null : LINE.count(line.needed, picks, passes && MOVES[step].blind);
          if (problem.value === null) onChoose(choice);
        }}
      >
        {LINE.goOn}
      </button>
    </>
  );
}

const OWN = 'own';

function withCount({ chosen }: GuidedDeal, choice: AnswerChoice): Option {
  const key = JSON.stringify(choice);
  return chosen.find((one) => JSON.stringify(one.choice) === key) ?? { choice, players: 0 };
}

function Chosen({ option: { choice, players } }: { readonly option: Option }) {
  switch (choice.kind) {
    case 'seal':
      return (
        <span>
          <TileRow tiles={choice.tiles} /> {choice.blind > 0 && `${optionName('blind', choice.blind)} `}
          <span class="aside">({madeBy(players)})</span>
        </span>
      );
    case 'vote':
    case 'ask':
      return (
        <span>
          {optionName(choice.kind, choice.kind === 'vote' ? Number(choice.go) : choice.count)}
          {players > 0 && <span class="aside"> ({madeBy(players)})</span>}
        </span>
      );
  }
}

interface RackPickerProps {
  readonly rack: readonly Face[];
  /** Of the tiles picked, in the order they were tapped. */
  readonly places: readonly number[];
  readonly onPlaces: (places: readonly number[]) => void;
}

function RackPicker({ rack, places, onPlaces }: RackPickerProps) {
  return (
    <div class="picker">
      <p>{LINE.pick}</p>
      <ul class="pool">
        {rack.map((face, place) => (
          <li key={`${place}-${face}`}>
            <button
              type="button"
              class="tile-button"
              aria-label={tileName(face)}
              aria-pressed={places.includes(place)}
              disabled={face === 'joker'}
              onClick={() =>
                onPlaces(
                  places.includes(place) ? places.filter((other) => other !== place) : [...places, place],
                )
              }
            >
              <Tile face={face} small />
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
