// What a player of a guided deal is told above the table about the choice that the class continued from.
import { actualStep, type SeatStep, type SeatView } from '../../../shared-engine/index.ts';
import { STEP_NAMES } from '../../room/step-names.ts';
import { tileCount, tileList } from '../../tiles/tile-names.ts';

/** Null as long as there is nothing to tell. */
export function guidedMessage({ record, stage }: SeatView, held: boolean): string | null {
  const { steps, actualSteps = [], seat } = record;
  if (stage.phase === 'closed') {
    return 'This was a guided deal. Your review covers your own choices, each with the tiles you held then.';
  }
  if (steps.length > actualSteps.length) {
    // After the end of the class nobody is held any more, and the table plays on by itself.
    return held ? 'You have chosen. Your teacher picks the choice that everybody continues from.' : null;
  }
  const last = actualSteps.length - 1;
  const step = steps[last];
  if (step === undefined) return null;
  const own = actualStep(record, last);
  if (own === null) return 'You have joined in the middle of this deal.';
  const [guided, yours] = [choiceText(step, seat), choiceText(own, seat)];
  if (guided === yours) return `The class continued from: ${guided}. That was your choice too.`;
  return `The class continued from: ${guided}. Your own choice (${yours}) is kept for your review.`;
}

/** What this seat chose at a step: `3 bam, east wind and 1 tile blind`. */
function choiceText(step: SeatStep, seat: SeatView['record']['seat']): string {
  switch (step.kind) {
    case 'vote':
      return step.go[seat] ? 'a second Charleston' : 'no second Charleston';
    case 'ask':
      return `${tileCount(step.asked[seat])} for courtesy`;
    case 'move': {
      const blind = step.blind[seat] > 0 ? `${tileCount(step.blind[seat])} blind` : '';
      const tiles = step.gave.length > 0 ? tileList(step.gave) : '';
      const text = [tiles, blind].filter(Boolean).join(' and ');
      return text === '' ? `nothing to pass at ${STEP_NAMES[step.step].toLowerCase()}` : text;
    }
  }
}
