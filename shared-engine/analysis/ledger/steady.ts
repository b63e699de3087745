// What our steady player would choose in a situation, and what was chosen, as actions of the rollouts.
import type { CompiledCard } from '../../card/index.ts';
import { createSteadySelection } from '../../policy/index.ts';
import { type Actor, type Bag, faceIndex, mayPassBlind, PASS_SIZE, type Step } from '../../rules/index.ts';
import type { OfferedChoice } from '../belief/situation.ts';
import { actionOf } from '../comparison/alternatives.ts';

/** How many blind comes before the tiles of the same step. */
export type LedgerKind = 'blind' | 'pass' | 'vote' | 'ask';

/** One choice, with the action that makes it and goes on, within the step, as the steady player would. */
export interface ChosenPart {
  readonly kind: LedgerKind;
  readonly step: Step;
  readonly by: Actor;
  readonly action: readonly number[];
}

/** A step that a seat had a choice in. */
export interface StepActions {
  readonly steady: readonly number[];
  readonly parts: readonly ChosenPart[];
}

export interface SteadyPlayer {
  actionsFor(offered: OfferedChoice): StepActions;
  /** The first pass of a rack. */
  firstPass(rack: Bag): readonly number[];
}

/** Passes, votes and asks as every seat of the rollouts does, without misjudging anything. */
export function createSteadyPlayer(card: CompiledCard): SteadyPlayer {
  const select = createSteadySelection(card);

  function actionsFor({ situation, chosen }: OfferedChoice): StepActions {
    const { seat, terms, rack } = situation;
    const { tiles, spare } = select(rack);
    const by = chosen.by[seat] ?? 'bot';
    switch (chosen.kind) {
      case 'vote': {
        const made = actionOf([], chosen.go[seat] ? 1 : 0);
        return {
          steady: actionOf([], spare === PASS_SIZE ? 1 : 0),
          parts: [{ kind: 'vote', step: 'vote', by, action: made }],
        };
      }
      case 'ask': {
        const made = actionOf([], chosen.asked[seat]);
        const step = 'courtesy-ask';
        return { steady: actionOf([], spare), parts: [{ kind: 'ask', step, by, action: made }] };
      }
      case 'move': {
        const { step } = chosen;
        const gave = chosen.gave.map(faceIndex);
        const made: ChosenPart = { kind: 'pass', step, by, action: passing(gave) };
        if (!mayPassBlind(step, terms)) {
          return { steady: passing(tiles.slice(0, gave.length)), parts: [made] };
        }
        const number: ChosenPart = { kind: 'blind', step, by, action: passing(tiles.slice(0, gave.length)) };
        return {
          steady: passing(tiles.slice(0, spare)),
          parts: gave.length > 0 ? [number, made] : [number],
        };
      }
    }
  }

  return { actionsFor, firstPass: (rack) => passing(select(rack).tiles) };
}

/** In rack order, so that the same tiles are the same action. */
function passing(tiles: readonly number[]): readonly number[] {
  return actionOf(
    [...tiles].sort((a, b) => a - b),
    tiles.length,
  );
}
