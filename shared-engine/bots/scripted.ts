// What a bot at a scripted deal answers: what the script says of its step, otherwise its own choice (rule R6).
import {
  type AnswerChoice,
  bagOf,
  countOf,
  type DealScript,
  type Face,
  facesOf,
  MOVE_STEPS,
  type MoveStep,
  type SeatView,
  sortFaces,
} from '../rules/index.ts';

/**
 * `own` is the bot's choice for the open step. Of a scripted pass it gives what it holds; it passes nothing earlier that
 * is due later, unless there is nothing else. As legal as `own`, and `own` itself where the script says nothing of the seat.
 */
export function scriptedChoice(script: DealScript, view: SeatView, own: AnswerChoice): AnswerChoice {
  const mine = script.filter(({ seat }) => seat === view.record.seat).map(({ choice }) => choice);
  const said = mine.find(({ step }) => step === own.step);
  if (own.kind !== 'pass') return said?.kind === own.kind ? said : own;
  const passes = mine.flatMap((choice) => (choice.kind === 'pass' ? [choice] : []));
  if (passes.length === 0) return own;
  const wanted = said?.kind === 'pass' ? said.tiles : [];
  const blind = wanted.length > 0 ? 0 : own.blind;
  const count = own.tiles.length + own.blind - blind;
  const now = heldOf(view.rack, wanted).slice(0, count);
  const rest = without(view.rack, now);
  const later = passes.flatMap(({ step, tiles }) => (isBefore(own.step, step) ? tiles : []));
  const due = heldOf(rest, later);
  const free = without(rest, due).filter((face) => face !== 'joker');
  const chosen = heldOf(free, own.tiles);
  const order = [...now, ...chosen, ...without(free, chosen), ...due.toReversed()];
  return { ...own, tiles: sortFaces(order.slice(0, count)), blind };
}

function isBefore(step: MoveStep, other: MoveStep): boolean {
  return MOVE_STEPS.indexOf(step) < MOVE_STEPS.indexOf(other);
}

/** Those of `tiles` that are among `held`, in their order. */
function heldOf(held: readonly Face[], tiles: readonly Face[]): Face[] {
  const bag = bagOf(held);
  return tiles.filter((face, place) => {
    const before = tiles.slice(0, place).filter((other) => other === face).length;
    return before < countOf(bag, face);
  });
}

/** `tiles` in rack order without as many of each face as are in `away`, all of which are among them. */
function without(tiles: readonly Face[], away: readonly Face[]): Face[] {
  const gone = bagOf(away);
  return facesOf(bagOf(tiles).map((count, face) => count - gone[face]!));
}
