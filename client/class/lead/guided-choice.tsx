// The choice that a guided deal continues from: one that players made, or a pass of the teacher's own.
import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { AnswerChoice, GuidedDeal } from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { countMessage, GUIDED, madeBy, numberChoice } from './guided-strings.ts';
import { type OwnPass, PassPicker } from './pass-picker.tsx';

interface GuidedChoiceProps {
  readonly guidedDeal: GuidedDeal;
  readonly step: NonNullable<GuidedDeal['step']>;
  /** Whether choices that few players made are left out. */
  readonly anonymous: boolean;
  readonly onChoose: (choice: AnswerChoice | null) => void;
}

type Option = GuidedDeal['chosen'][number];

const NUMBERS = { vote: [1, 0], 'courtesy-ask': [0, 1, 2, 3] } as const;

/** The value of the radio button for the teacher's own pass. */
const OWN = 'own';

export function GuidedChoice({ guidedDeal, step, anonymous, onChoose }: GuidedChoiceProps) {
  const selected = useSignal<string | null>(null);
  const own = useSignal<OwnPass>({ places: [], blind: 0 });
  const problem = useSignal<string | null>(null);
  const { rack, needed } = guidedDeal;
  const passStep = step === 'vote' || step === 'courtesy-ask' ? null : step;
  if (passStep !== null && needed === 0) {
    return (
      <>
        <p>{GUIDED.nothing}</p>
        <AdvanceButton onClick={() => onChoose(null)} />
      </>
    );
  }
  const options = optionsAt(guidedDeal, step);
  const at = selected.value ?? mostFrequent(options);
  const ownChosen = passStep !== null && at === OWN;

  function advance() {
    const { places, blind } = own.value;
    if (!ownChosen) return onChoose(options.find((option) => keyOf(option) === at)?.choice ?? null);
    const picked = places.length + blind;
    problem.value = picked === needed ? null : countMessage(needed, picked);
    if (problem.value !== null) return;
    onChoose({ kind: 'pass', step: passStep, tiles: places.map((place) => rack[place]!), blind });
  }

  return (
    <>
      <fieldset class="guided-options">
        <legend>{GUIDED.advanceFrom(step)}</legend>
        {options.map((option) => (
          <OptionRadio key={keyOf(option)} value={keyOf(option)} selected={at} onSelect={selected}>
            <OptionText option={option} />
          </OptionRadio>
        ))}
        {passStep !== null && (
          <OptionRadio value={OWN} selected={at} onSelect={selected}>
            {GUIDED.other}
          </OptionRadio>
        )}
      </fieldset>
      {ownChosen && <PassPicker rack={rack} pass={own} withBlind={guidedDeal.blindAllowed} />}
      {anonymous && <p class="aside">{GUIDED.anonymity}</p>}
      <p class="notice" role="alert">
        {problem.value}
      </p>
      <AdvanceButton onClick={advance} />
    </>
  );
}

/** The choices that players made; of a number every possible one. */
function optionsAt({ chosen }: GuidedDeal, step: GuidedChoiceProps['step']): readonly Option[] {
  if (step !== 'vote' && step !== 'courtesy-ask') return chosen;
  return NUMBERS[step].map((number) => {
    const choice = numberChoice(step, number);
    const key = JSON.stringify(choice);
    return chosen.find((option) => keyOf(option) === key) ?? { choice, players: 0 };
  });
}

function keyOf({ choice }: Option): string {
  return JSON.stringify(choice);
}

/** Selected until the teacher selects another. */
function mostFrequent(options: readonly Option[]): string {
  const most = Math.max(...options.map(({ players }) => players));
  const first = options.find(({ players }) => players === most);
  return first ? keyOf(first) : OWN;
}

interface OptionRadioProps {
  readonly value: string;
  readonly selected: string;
  readonly onSelect: Signal<string | null>;
  readonly children: ComponentChildren;
}

function OptionRadio({ value, selected, onSelect, children }: OptionRadioProps) {
  return (
    <label class="choice">
      <input
        type="radio"
        name="guided"
        checked={selected === value}
        onChange={() => {
          onSelect.value = value;
        }}
      />
      {children}
    </label>
  );
}

function OptionText({ option: { choice, players } }: { readonly option: Option }) {
  switch (choice.kind) {
    case 'pass':
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

function AdvanceButton({ onClick }: { readonly onClick: () => void }) {
  return (
    <button type="button" class="primary" onClick={onClick}>
      {GUIDED.advance}
    </button>
  );
}
