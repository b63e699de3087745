// What the open step asks: tiles to pass, a vote, or a number.
import { useState } from 'preact/hooks';
import {
  type AnswerChoice,
  bagOf,
  type Face,
  facesOf,
  type LaidExchange,
  laidDecision,
  PASS_SIZE,
  type PendingDecision,
  passObjection,
} from '../../shared-engine/index.ts';
import { chooseMore, optionName, STEP_NAMES } from '../room/step-names.ts';
import { Tile } from '../tiles/tile.tsx';
import { tileName } from '../tiles/tile-names.ts';
import { OWN_TILES, placeName } from './strings.ts';

interface AnswerFormProps {
  readonly exchange: LaidExchange;
  readonly onAnswer: (choice: AnswerChoice) => void;
  /** Judges a choice before it is made. */
  readonly onCompare: (choice: AnswerChoice) => void;
}

export function AnswerForm({ exchange, onAnswer, onCompare }: AnswerFormProps) {
  const decision = laidDecision(exchange);
  if (decision === null) return null;
  return (
    <section class="own-step" aria-labelledby="own-step-title">
      <h2 id="own-step-title">{STEP_NAMES[decision.step]}</h2>
      {decision.kind === 'pass' ? (
        <PassForm
          key={decision.step}
          rack={facesOf(exchange.rack)}
          decision={decision}
          onAnswer={onAnswer}
          onCompare={onCompare}
        />
      ) : (
        <NumberForm key={decision.step} kind={decision.kind} onAnswer={onAnswer} onCompare={onCompare} />
      )}
    </section>
  );
}

interface PassFormProps extends Omit<AnswerFormProps, 'exchange'> {
  readonly rack: readonly Face[];
  readonly decision: PendingDecision & { readonly kind: 'pass' };
}

function PassForm({ rack, decision, onAnswer, onCompare }: PassFormProps) {
  const [places, setPlaces] = useState<readonly number[]>([]);
  const [blind, setBlind] = useState(0);
  const tiles = rack.filter((_, place) => places.includes(place));
  const { step, count, blindAllowed } = decision;
  const problem = passObjection(bagOf(rack), decision, tiles, blind);
  const choice: AnswerChoice = { kind: 'pass', step, tiles, blind };
  return (
    <>
      <p role="status">
        {problem === null ? OWN_TILES.choose : chooseMore(count - blind, tiles.length) || problem.message}
      </p>
      <ul class="laid-tiles own-rack">
        {rack.map((face, place) => (
          <li key={`${place}-${face}`}>
            <button
              type="button"
              class="laid-tile"
              aria-label={tileName(face)}
              aria-pressed={places.includes(place)}
              aria-disabled={face === 'joker'}
              onClick={() => {
                if (face === 'joker') return;
                setPlaces(
                  places.includes(place) ? places.filter((one) => one !== place) : [...places, place],
                );
              }}
            >
              <Tile face={face} small />
            </button>
          </li>
        ))}
      </ul>
      {blindAllowed && (
        <Numbers
          name="blind"
          legend={OWN_TILES.blindCount}
          value={blind}
          label={(value) => optionName('blind', value)}
          onChange={setBlind}
        />
      )}
      <Buttons
        choice={problem === null ? choice : null}
        words={OWN_TILES.pass}
        {...{ onAnswer, onCompare }}
      />
    </>
  );
}

interface NumberFormProps extends Omit<AnswerFormProps, 'exchange'> {
  readonly kind: 'vote' | 'ask';
}

function NumberForm({ kind, onAnswer, onCompare }: NumberFormProps) {
  const [value, setValue] = useState(kind === 'vote' ? 1 : 0);
  const choice: AnswerChoice =
    kind === 'vote' ? { kind, step: 'vote', go: value === 1 } : { kind, step: 'courtesy-ask', count: value };
  return (
    <>
      <Numbers
        name={kind}
        legend={kind === 'vote' ? OWN_TILES.vote : OWN_TILES.ask(placeName(2).toLowerCase())}
        value={value}
        values={kind === 'vote' ? [1, 0] : undefined}
        label={(one) => optionName(kind, one)}
        onChange={setValue}
      />
      <Buttons choice={choice} words={OWN_TILES.answer} {...{ onAnswer, onCompare }} />
    </>
  );
}

interface ButtonsProps extends Omit<AnswerFormProps, 'exchange'> {
  /** Null while it is not whole. */
  readonly choice: AnswerChoice | null;
  readonly words: string;
}

function Buttons({ choice, words, onAnswer, onCompare }: ButtonsProps) {
  return (
    <div class="row">
      <button
        type="button"
        class="primary"
        aria-disabled={choice === null}
        onClick={() => choice && onAnswer(choice)}
      >
        {words}
      </button>
      <button type="button" aria-disabled={choice === null} onClick={() => choice && onCompare(choice)}>
        {OWN_TILES.compare}
      </button>
    </div>
  );
}

interface NumbersProps {
  readonly name: string;
  readonly legend: string;
  readonly value: number;
  readonly values?: readonly number[] | undefined;
  readonly label: (value: number) => string;
  readonly onChange: (value: number) => void;
}

const UP_TO_THREE = Array.from({ length: PASS_SIZE + 1 }, (_, count) => count);

/** A few numbers to choose one from. */
export function Numbers({ name, legend, value, values = UP_TO_THREE, label, onChange }: NumbersProps) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="row">
        {values.map((one) => (
          <label key={one} class="choice pill">
            <input type="radio" name={name} checked={value === one} onChange={() => onChange(one)} />
            <span>{label(one)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
