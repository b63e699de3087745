// How long a frame could be at most with other secrets in it: padded to that, its size tells nothing of them.
import {
  FACES,
  type Face,
  PASS_SIZE,
  type SeatStep,
  type SeatView,
  type View,
  type ViewDeltaText,
} from '../../shared-engine/index.ts';

const WIDEST = Math.max(...FACES.map((face) => face.length));
const ANSWER_AT_MOST = JSON.stringify({
  kind: 'pass',
  tiles: Array.from({ length: PASS_SIZE }, () => 'x'.repeat(WIDEST)),
  blind: 0,
} satisfies Record<keyof Extract<NonNullable<SeatView['answer']>, { kind: 'pass' }>, unknown>).length;

/** Of a whole view, in characters. How many tiles somebody holds or has passed is public. */
export function spareInView(view: View | null): number {
  if (view?.audience !== 'seat') return 0;
  const { rack, answer, record } = view;
  const { start, steps, actualSteps = [] } = record;
  return spareIn(rack) + spareInAnswer(answer) + spareIn(start) + spareInSteps([...steps, ...actualSteps]);
}

/** Of a written delta of a view, in characters. */
export function spareInText({ own }: ViewDeltaText): number {
  return own === null ? 0 : own.tiles.reduce((sum, faces) => sum + spareIn(faces), spareInAnswer(own.answer));
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
