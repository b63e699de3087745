// How long a frame could be at most with other secrets in it: padded to that, its size tells nothing of them.
import {
  FACES,
  type Face,
  PASS_SIZE,
  type SeatStep,
  type SeatView,
  type ServerMessage,
  type TableDelta,
  type View,
} from '../../shared-engine/index.ts';

const WIDEST = Math.max(...FACES.map((face) => face.length));
const ANSWER_AT_MOST = JSON.stringify({
  kind: 'pass',
  tiles: Array.from({ length: PASS_SIZE }, () => 'x'.repeat(WIDEST)),
  blind: 0,
} satisfies Record<keyof Extract<NonNullable<SeatView['answer']>, { kind: 'pass' }>, unknown>).length;

/** In characters; `text` is the message as it is written. How many tiles somebody holds or has passed is public. */
export function sizeAtMost(message: ServerMessage, text: string): number {
  if (message.kind !== 'table' && message.kind !== 'delta') return text.length;
  const { view = null } = message.table;
  const viewDelta = message.kind === 'delta' ? message.table.viewDelta : undefined;
  return text.length + spareInView(view) + spareInDelta(viewDelta);
}

function spareInView(view: View | null): number {
  if (view?.audience !== 'seat') return 0;
  const { rack, answer, record } = view;
  const { start, steps, actualSteps = [] } = record;
  return spareIn(rack) + spareInAnswer(answer) + spareIn(start) + spareInSteps([...steps, ...actualSteps]);
}

function spareInDelta(delta: TableDelta['viewDelta']): number {
  if (delta?.audience !== 'seat') return 0;
  const { rack = [], answer, steps } = delta;
  return spareIn(rack) + spareInAnswer(answer) + spareInSteps(steps);
}

function spareInSteps(steps: readonly (SeatStep | null)[]): number {
  return steps.reduce(
    (sum, step) => sum + (step?.kind === 'move' ? spareIn(step.gave) + spareIn(step.received) : 0),
    0,
  );
}

function spareInAnswer(answer: SeatView['answer']): number {
  return ANSWER_AT_MOST - JSON.stringify(answer).length;
}

function spareIn(faces: readonly Face[]): number {
  return faces.reduce((sum, face) => sum + WIDEST - face.length, 0);
}
